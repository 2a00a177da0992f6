import { barArea, gamma, unitAreaStrength } from '../../src/results/weibull.ts';
import type { Topic } from '../check.ts';
import { derived, published, rounding } from '../evidence.ts';
import { check } from '../posed.ts';

const c1683 = published(
  'ASTM C1683: effective area of the four-point-1/4 bar, L (w + d/(m + 1)) (m + 2)/(2 (m + 1))',
  rounding,
);
const c1239 = published('ASTM C1239: characteristic strength and effective area', {
  tolerance: 1e-7,
  why: 'gamma function printed to ten digits',
});

/** Configuration B of ASTM C1161: span 40, width 4, depth 3 mm. */
const area = (m: number) => (40 * (4 + 3 / (m + 1)) * (m + 2)) / (2 * (m + 1));
const bar = (is: 'mean' | 'characteristic', modulus: number) => unitAreaStrength({ strength: 300, is, modulus });

export const ceramicStrength: Topic = {
  name: 'ceramic strength',
  about: 'Weibull statistics of bending bars (ASTM C1161, C1239).',
  models: [
    {
      kind: 'formula',
      name: 'standard bar, configuration B',
      checks: [
        ...[5, 10, 20].map((m) =>
          check(`effective area, m = ${m}`, 'mm2', 1, area(m), c1683, () => barArea(m), rounding),
        ),
        check(
          'effective area, no scatter',
          'L w',
          160,
          1 / 2,
          derived('all of the inner span is stressed alike', { tolerance: 1e-6, why: 'm = 1e9 stands for no scatter' }),
          () => barArea(1e9),
          rounding,
        ),
        check(
          'risk at the characteristic strength, m = 10',
          '1',
          1,
          1,
          c1239,
          () => (300 / bar('characteristic', 10)) ** 10 * area(10),
          rounding,
        ),
        check(
          'mean over characteristic strength, m = 10',
          '1',
          1,
          0.9513507699,
          published('ASTM C1239; Abramowitz & Stegun, Table 6.1: Gamma(1.1)', c1239.accepted),
          () => bar('characteristic', 10) / bar('mean', 10),
          rounding,
        ),
        check(
          'Gamma(1.5)',
          '1',
          1,
          Math.sqrt(Math.PI) / 2,
          published('Abramowitz & Stegun, 6.1.9', rounding),
          () => gamma(1.5),
          rounding,
        ),
      ],
    },
  ],
};
