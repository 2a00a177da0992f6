import type { HeadModel } from '@flathead/solver';
import type { Change } from './difference/change.ts';

/** One bar of a waterfall: from level to level, in steps of the last digit shown, so that bars add up exactly. */
export interface Fall {
  /** The changes it is of: several where the heads between them have no answer. */
  readonly changes: readonly Change[];
  readonly from: number;
  readonly to: number;
}

/**
 * Heads from one to the other, a change more each time.
 *
 * @returns as many as changes and one more: the first head and, for the last, the other itself
 */
export function chainOf(from: HeadModel, to: HeadModel, changes: readonly Change[]): HeadModel[] {
  const chain = [from];
  for (const { make } of changes) chain.push(make(chain[chain.length - 1]));
  return changes.length === 0 ? chain : [...chain.slice(0, -1), to];
}

/** Decimals that show the largest of some levels to three figures, as the verdict does; at most three. */
export function levelDecimals(levels: readonly number[]): number {
  const most = Math.max(...levels.map(Math.abs), 1e-9);
  return Math.min(3, Math.max(0, 2 - Math.floor(Math.log10(most))));
}

/**
 * What each change adds, in the order they are made.
 *
 * @param levels at the heads of the chain; `null` = the head has no answer, so that its change counts with the next
 * @returns levels in whole steps of `10^-decimals`; the bars lead from the first to the last without a gap
 */
export function waterfall(changes: readonly Change[], levels: readonly (number | null)[], decimals: number): Fall[] {
  const step = (level: number): number => Math.round(level * 10 ** decimals);
  const falls: Fall[] = [];
  let before = levels[0];
  let held: Change[] = [];
  changes.forEach((change, i) => {
    held = [...held, change];
    const level = levels[i + 1];
    if (level === null || before === null) return;
    falls.push({ changes: held, from: step(before), to: step(level) });
    before = level;
    held = [];
  });
  return falls;
}
