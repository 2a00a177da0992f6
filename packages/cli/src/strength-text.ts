import type { CaseStrength } from '@flathead/solver';
import { place, plain } from './format.ts';
import { table } from './table.ts';
import type { Paint } from './terminal.ts';

/** Body and frame of one case: largest stress, where, strength factor and failure probability. */
export function strengthText({ parts }: CaseStrength, paint: Paint): string {
  const or = (value: number | null, text: (value: number) => string) => (value === null ? '-' : text(value));
  return table(
    ['part', 'stress', 'MPa', 'face', 'at x, y, mm', 'near', 'strength, MPa', 'factor', 'failure probability'],
    parts.map((part) => [
      part.part,
      part.measure,
      plain(part.stress),
      part.face,
      place(part.at),
      part.near,
      or(part.strength, plain),
      or(part.factor, (value) => (value < 1e6 ? plain(value) : 'over 1e6')),
      or(part.failureProbability, (value) => (value === 0 ? '0' : value.toExponential(1))),
    ]),
    paint,
    [1, 3, 5],
  );
}
