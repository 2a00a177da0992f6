import type { HeadModel, PlateProblem } from '@flathead/solver';
import fc from 'fast-check';
import { headModels } from './heads.ts';
import { altered, changes, damage, damaged } from './hostile-text.ts';
import { plateProblems } from './plates.ts';

export type Kind = 'valid' | 'nearly valid' | 'hostile';

/** What one seed stands for: the text of a model, of which kind, and what it was made from. */
export type FuzzCase = {
  readonly seed: number;
  readonly kind: Kind;
  readonly text: string;
} & ({ readonly of: 'plate'; readonly model: PlateProblem } | { readonly of: 'head'; readonly model: HeadModel });

const kinds: readonly Kind[] = ['valid', 'nearly valid', 'hostile'];

/** The case of a seed, the same every time: of six seeds in a row three are plates and three are heads, of each kind one. */
export function caseOfSeed(seed: number): FuzzCase {
  const kind = kinds[seed % 3];
  // One in five is drawn towards the ends of all ranges.
  const first = <T>(arbitrary: fc.Arbitrary<T>): T =>
    fc.sample(seed % 5 === 4 ? arbitrary : fc.noBias(arbitrary), { seed, numRuns: 1 })[0];
  const textOf = (model: object): string => {
    if (kind === 'valid') return JSON.stringify(model);
    if (kind === 'nearly valid') return JSON.stringify(altered(model, first(changes)));
    return damaged(JSON.stringify(model), first(damage));
  };
  if (seed % 2 === 0) {
    const model = first(plateProblems);
    return { seed, kind, of: 'plate', model, text: textOf(model) };
  }
  const model = first(headModels);
  return { seed, kind, of: 'head', model, text: textOf(model) };
}
