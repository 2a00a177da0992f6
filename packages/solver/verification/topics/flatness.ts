import { flatness } from '../../src/results/flatness.ts';
import type { FormulaModel, Topic } from '../check.ts';
import { deflections, derived, rounding } from '../evidence.ts';
import { a, check, onRectangle, plateOf, posed, sizeFor, thickness } from '../posed.ts';

type Measure = 'minimum zone' | 'total' | 'peak' | 'valley' | 'rms';

const iso = derived('definitions of ISO 12781-1 on constructed points', rounding);

/** Points x, y, z and what ISO 12781-1 makes of them, in `scale`. */
function set(
  name: string,
  points: readonly number[],
  scale: number,
  expected: Partial<Record<Measure, number>>,
): FormulaModel {
  const measured = (measure: Measure) => () => {
    const { leastSquares, minimumZone } = flatness(Float64Array.from(points));
    return measure === 'minimum zone' ? minimumZone : leastSquares[measure];
  };
  const label: Record<Measure, string> = {
    'minimum zone': 'FLTt, minimum zone',
    total: 'FLTt, least squares',
    peak: 'FLTp, least squares',
    valley: 'FLTv, least squares',
    rms: 'FLTq, least squares',
  };
  return {
    kind: 'formula',
    name,
    checks: (Object.keys(expected) as Measure[]).map((measure) =>
      check(label[measure], 'h', scale, expected[measure]!, iso, measured(measure), rounding),
    ),
  };
}

const h = 0.02;
const square = (z: readonly number[], tilt = 0) =>
  [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ].flatMap(([x, y], i) => [30 * x, 30 * y, z[i] + tilt * (x - 0.4 * y)]);
const third = (2 * Math.PI) / 3;
const triangle = [0, 1, 2].flatMap((k) => [30 * Math.cos(k * third), 30 * Math.sin(k * third), 0]);

const kappa = (6.5e-6 * 30) / thickness;
const heated = {
  temperature: { gradient: 30, alpha: 6.5e-6 },
  supports: [{ at: [-20, -20] }, { at: [20, -20] }, { at: [0, 20] }] as { at: [number, number] }[],
};

export const flatnessSets: Topic = {
  name: 'flatness',
  about: 'ISO 12781-1 parameters of constructed sets of points and of plates bent to a sphere.',
  models: [
    set('corners of a square at +-h in turn', square([h, -h, h, -h]), h, {
      'minimum zone': 2,
      total: 2,
      peak: 1,
      valley: 1,
      rms: 1,
    }),
    set('the same, tilted', square([h, -h, h, -h], 1e-5), h, { 'minimum zone': 2, total: 2 }),
    set('regular triangle and an apex h over its middle', [...triangle, 0, 0, h], h, {
      'minimum zone': 1,
      peak: 3 / 4,
      valley: 1 / 4,
      rms: Math.sqrt(3) / 4,
    }),
    posed(
      'disc bent to a sphere by a gradient, over all of it',
      { ...plateOf({ circle: a }, heated), report: { over: { circle: a } } },
      // Arcs of the outline and of the reported area are both meshed: more nodes than the size asks for.
      1.1 * sizeFor((Math.PI * a * a) / 4),
      [
        check(
          'FLTt, minimum zone',
          'kappa R^2',
          kappa * (a / 2) ** 2,
          1 / 2,
          derived('sagitta of a sphere'),
          { of: 'flatness' as const },
          deflections,
        ),
      ],
    ),
    onRectangleOver(),
  ],
};

/** A field of a by a/2 in a sphere of a by a: the sagitta to its corners. */
function onRectangleOver() {
  const field: [number, number] = [0.8 * a, 0.4 * a];
  const model = onRectangle('field of 0.8 a by 0.4 a of a plate bent to a sphere', 1, heated, [
    check(
      'FLTt, minimum zone',
      'kappa a^2',
      kappa * a ** 2,
      (0.4 ** 2 + 0.2 ** 2) / 2,
      derived('sagitta of a sphere'),
      { of: 'flatness' as const },
      deflections,
    ),
  ]);
  return { ...model, plate: { ...model.plate, report: { over: { rectangle: field } } } };
}
