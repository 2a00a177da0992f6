import type { CaseResult } from '@flathead/solver';
import { um } from './format.ts';

/** Cases of a family over a wafer that are printed; `--json` has them all. */
const WORST = 3;

/** `3 load cases`, or `2 load cases and 57 touchdowns over a wafer`. */
export function caseCount(cases: readonly CaseResult[]): string {
  const own = cases.filter(({ family }) => family === undefined).length;
  const rest = cases.length - own;
  const words = (count: number, noun: string) => `${count} ${noun}${count === 1 ? '' : 's'}`;
  if (rest === 0) return words(own, 'load case');
  return [...(own > 0 ? [words(own, 'load case')] : []), `${words(rest, 'touchdown')} over a wafer`].join(' and ');
}

/** Cases as they are printed, in order: of each family over a wafer a line, then its worst few by bow. */
export function printedCases(cases: readonly CaseResult[]): (CaseResult | string)[] {
  const seen = new Set<string>();
  return cases.flatMap((load) => {
    const { family } = load;
    if (family === undefined) return [load];
    if (seen.has(family)) return [];
    seen.add(family);
    const members = cases.filter((other) => other.family === family);
    const bow = ({ bow: { value } }: CaseResult) => Math.abs(value);
    const worst = [...members].sort((a, b) => bow(b) - bow(a)).slice(0, WORST);
    const least = Math.min(...members.map(bow));
    const shown = worst.length < members.length ? `; the worst ${worst.length} by bow follow, --json has all` : '';
    const count = `${members.length} set${members.length === 1 ? '' : 's'} of touched sites`;
    return [`Case "${family}": ${count}, largest bow ${um(least)} to ${um(bow(worst[0]))} um${shown}`, ...worst];
  });
}
