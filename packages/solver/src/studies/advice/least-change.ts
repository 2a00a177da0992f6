import { attempted, type Change, type Cure, type Trial } from './cure.ts';

/**
 * Of changes from little to much, the least that suffices, else that with most gain.
 *
 * @param grows more of it gains more; else the way back from the last is tried as long as that gains
 */
export function* bestOf(
  trial: Trial,
  changes: readonly Change[],
  grows: boolean,
): Generator<string, Cure | null, void> {
  const solved = new Map<number, Cure | null>();
  const at = function* (i: number): Generator<string, Cure | null, void> {
    if (!solved.has(i)) {
      yield 'advice';
      solved.set(i, attempted(trial, changes[i]));
    }
    return solved.get(i) ?? null;
  };
  let top = changes.length - 1;
  for (; top >= 0; top--) {
    const here = yield* at(top);
    if (here === null && top > 0) continue;
    if (here === null || here.within || grows || top === 0) break;
    const less = yield* at(top - 1);
    if (less === null || less.gain <= here.gain) break;
  }
  if (top < 0) return null;
  if (!(yield* at(top))?.within) return yield* at(top);
  let short = -1;
  while (top - short > 1) {
    const middle = Math.floor((top + short) / 2);
    if ((yield* at(middle))?.within) top = middle;
    else short = middle;
  }
  return yield* at(top);
}
