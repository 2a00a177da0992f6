import type { HeadResult } from '@flathead/solver';
import { stressDigits } from '../format/number.ts';
import type { NumberRows } from '../format/number-rows.ts';
import { NONE } from './cells.ts';

/** Largest stress of body and frame over all cases. */
export function strengthRows({ cases }: HeadResult): NumberRows | null {
  const rows = (['body', 'frame'] as const).flatMap((part) => {
    const found = cases.flatMap(({ name, strength }) =>
      (strength?.parts ?? []).filter((other) => other.part === part).map((other) => ({ name, ...other })),
    );
    if (found.length === 0) return [];
    const worst = found.reduce((a, b) => (b.stress > a.stress ? b : a));
    const { measure, stress, fastener, near, face, strength, factor, failureProbability, name } = worst;
    return [
      [
        `${part}, ${measure === 'principal' ? 'tension' : measure}`,
        stressDigits(stress),
        fastener === null ? `near ${near}, ${face} side` : `bearing of ${fastener}`,
        name,
        strength === null ? NONE : stressDigits(strength),
        factor === null ? NONE : stressDigits(factor),
        failureProbability === null ? NONE : failureProbability.toExponential(1).replace('-', '\u2212'),
      ],
    ];
  });
  if (rows.length === 0) return null;
  return {
    columns: ['Part', 'Stress, MPa', 'Where', 'In case', 'Strength, MPa', 'Factor', 'Fails with'],
    rows,
  };
}
