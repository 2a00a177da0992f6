import type { VerificationCase, VerificationRow } from '@flathead/solver/verification';
import { fieldText } from '../format/number.ts';
import type { NumberRows } from '../format/number-rows.ts';

/** How the basis of a number is told: whether its source was read, remembered, or is a computation of its own. */
export const BASES: Readonly<Record<VerificationCase['basis'], string>> = {
  published: 'published',
  memory: 'from memory',
  derived: 'derived independently',
};

const POWERS = '\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079';

/** A unit with its powers raised: `q a\u2074/D` of `q a^4/D`. */
export function unitText(unit: string): string {
  return unit.replace(/\^(\d)/g, (_, digit: string) => POWERS[Number(digit)]);
}

export type CheckState = 'open' | 'within' | 'outside';

export function stateOf(row: VerificationRow | undefined): CheckState {
  if (row === undefined) return 'open';
  return row.within ? 'within' : 'outside';
}

/** To five figures, by powers of ten where it is very small or large. */
export function checkNumber(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  const text = size >= 1e-4 && size < 1e6 ? String(Number(value.toPrecision(5))) : value.toExponential(4);
  return text.replaceAll('-', '\u2212');
}

/** A tolerance or deviation: a share in per cent, or an amount where zero is expected. */
export function shareText(share: number, { expected, unit }: Pick<VerificationCase, 'expected' | 'unit'>): string {
  if (expected === 0) return `${checkNumber(share)} ${unit}`;
  const percent = 100 * share;
  const size = Math.abs(percent);
  const text = size === 0 ? '0' : size < 1e-3 ? percent.toExponential(0) : fieldText(Number(percent.toPrecision(2)));
  return `${text.replaceAll('-', '\u2212')} %`;
}

export interface CheckTopic {
  readonly name: string;
  readonly cases: readonly VerificationCase[];
}

/** Cases by topic, in the order of the book. */
export function topicsOf(cases: readonly VerificationCase[]): CheckTopic[] {
  const topics = new Map<string, VerificationCase[]>();
  for (const each of cases) topics.set(each.topic, [...(topics.get(each.topic) ?? []), each]);
  return [...topics].map(([name, members]) => ({ name, cases: members }));
}

/** `31 of 206 run, 31 within their tolerance`. */
export function tally(cases: readonly VerificationCase[], rows: ReadonlyMap<number, VerificationRow>): string {
  const run = cases.flatMap(({ index }) => rows.get(index) ?? []);
  if (run.length === 0) return `${cases.length} cases, none run yet`;
  const within = run.filter((row) => row.within).length;
  return `${run.length} of ${cases.length} run, ${within === run.length ? 'all' : within} within their tolerance`;
}

/** The book by topic, in figures: how many cases rest on what, and how many of those run on this visit are right. */
export function bookRows(cases: readonly VerificationCase[], rows: ReadonlyMap<number, VerificationRow>): NumberRows {
  return {
    columns: ['Topic', 'Published', 'Remembered', 'Derived', ...(rows.size === 0 ? [] : ['Within'])],
    rows: topicsOf(cases).map(({ name, cases: members }) => {
      const run = members.flatMap(({ index }) => rows.get(index) ?? []);
      const of = (basis: string) => String(members.filter((each) => each.basis === basis).length);
      const right = run.filter((row) => row.within).length;
      return [
        ...[name, ...Object.keys(BASES).map(of)],
        ...(rows.size === 0 ? [] : [run.length === 0 ? '\u2013' : `${right}/${run.length}`]),
      ];
    }),
  };
}
