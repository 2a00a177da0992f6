import { togetherWords } from '../../results/advice-words.ts';
import { attempted, type Cure, rank, type Trial } from './cure.ts';

/** Several cures in one head: fasteners and ribs, the two with most gain, the three, and all; the first that suffices. */
export function* bestTogether(trial: Trial, cures: readonly Cure[]): Generator<string, Cure | null, void> {
  const byGain = cures.toSorted((a, b) => b.gain - a.gain);
  const plain = cures.filter(({ kind }) => kind === 'fasteners' || kind === 'ribs');
  const sets = [plain, byGain.slice(0, 2), byGain.slice(0, 3), byGain].filter((set) => set.length > 1);
  const distinct = sets.filter((set, i) => sets.findIndex((other) => alike(other, set)) === i);
  let best: Cure | null = null;
  for (const set of distinct) {
    yield 'advice';
    const found = attempted(trial, {
      kind: 'together',
      what: togetherWords(set.toSorted((a, b) => rank(a) - rank(b))),
      by: set[0].by,
      // The frame becomes thicker before ribs are added that follow it.
      apply: (head) => set.toSorted((a, b) => rank(b) - rank(a)).reduce((sum, cure) => cure.apply(sum), head),
    });
    if (found === null) continue;
    if (best === null || found.within || found.gain > best.gain) best = found;
    if (found.within) break;
  }
  return best;
}

function alike(a: readonly Cure[], b: readonly Cure[]): boolean {
  return a.length === b.length && a.every((cure) => b.includes(cure));
}
