import { proofStress } from '../../src/model/grades.ts';
import { coneCompliance, screwCompliance } from '../../src/model/joint-compliance.ts';
import { screws } from '../../src/model/screws.ts';
import { jointUnder } from '../../src/results/joint.ts';
import type { FormulaModel, Topic } from '../check.ts';
import { derived, memory, published, rounding } from '../evidence.ts';
import { check } from '../posed.ts';

const iso898 = memory('ISO 898-1: pi/4 (d - 0.9382 P)^2');
const iso3506 = published('ISO 3506-1, A2-70: 450 MPa on the stress area', {
  tolerance: 0.005,
  why: 'loads are printed to the newton from areas of three digits',
});

const area = (size: string, diameter: number, pitch: number): FormulaModel['checks'][number] =>
  check(
    `stress area of ${size}`,
    'mm2',
    1,
    (Math.PI / 4) * (diameter - 0.9382 * pitch) ** 2,
    iso898,
    () => screws[size].stressArea,
    rounding,
  );
const proof = (size: string, load: number): FormulaModel['checks'][number] =>
  check(
    `0.2 % proof load of ${size}`,
    'N',
    1,
    load,
    iso3506,
    () => proofStress['A2-70'] * screws[size].stressArea,
    rounding,
  );

/** Compliance of a widening hollow cone, dz/(E A) summed by Simpson's rule. */
function cone(dw: number, dh: number, length: number, E: number): number {
  const slope = 0.348 + 0.013 * Math.log(length / dw) + 0.193 * Math.log(3);
  const flexibility = (z: number) => 4 / (Math.PI * E * ((dw + 2 * z * slope) ** 2 - dh ** 2));
  const n = 4000;
  const sum = Array.from(
    { length: n + 1 },
    (_, i) => (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) * flexibility((i * length) / n),
  );
  return (sum.reduce((total, value) => total + value, 0) * length) / n / 3;
}

/** Bar E A_3 on the springs of its flanks, over so many slices that it is one: compliance at its loaded end. */
function engaged(length: number): number {
  const { diameter: d, pitch } = screws.M3;
  const core = 200_000 * (Math.PI / 4) * (d - 1.22687 * pitch) ** 2;
  const long = (0.5 * d) / core + (0.33 * d) / (200_000 * (Math.PI / 4) * d ** 2);
  const flank = 1 / (core * long ** 2);
  const n = 20_000;
  const step = length / n;
  // From the free end: stiffness of what lies beyond, one flank spring and one piece of bar at a time.
  let stiffness = 0;
  for (let i = 0; i < n; i++) {
    stiffness += (flank * step) / 2;
    stiffness = 1 / (1 / stiffness + step / core);
    stiffness += (flank * step) / 2;
  }
  return 1 / stiffness;
}

const preloaded = {
  preload: { low: 1000, high: 1400 },
  share: 0.2,
  proofLoad: 2264,
  strippingLoad: null,
  openStiffness: 1e5,
};
const vdi = derived('joint diagram: screw V + Phi F, clamp V - (1 - Phi) F', rounding);
const joint = (quantity: string, expected: number, read: () => number): FormulaModel['checks'][number] =>
  check(quantity, 'N', 1, expected, vdi, read, rounding);

export const screwJoints: Topic = {
  name: 'screws and joints',
  about: 'Sizes and strengths of the standards, compliances and the joint diagram.',
  models: [
    {
      kind: 'formula',
      name: 'metric coarse threads',
      checks: [
        area('M1.6', 1.6, 0.35),
        area('M2', 2, 0.4),
        area('M2.5', 2.5, 0.45),
        area('M3', 3, 0.5),
        area('M4', 4, 0.7),
        area('M5', 5, 0.8),
        area('M6', 6, 1),
        proof('M2', 933),
        proof('M2.5', 1526),
        proof('M3', 2264),
        proof('M4', 3950),
      ],
    },
    {
      kind: 'formula',
      name: 'compliances',
      checks: [
        check(
          'clamped cone under an M3 head, 8 mm',
          'mm/N',
          1,
          cone(5.07, 3.4, 8, 200_000),
          derived("hollow cone summed slice by slice (Simpson's rule)", {
            tolerance: 1e-6,
            why: "Simpson's rule on 4000 slices",
          }),
          () => coneCompliance(5.07, 3.4, 8, 200_000),
          rounding,
        ),
        check(
          'M3 thread engaged over 3 mm',
          'mm/N',
          1,
          engaged(3),
          derived('bar on springs, 20000 slices', { tolerance: 1e-4, why: '20000 slices' }),
          () => {
            const { engaged: thread, tapped } = screwCompliance(screws.M3, 8, 3);
            return thread + tapped;
          },
          rounding,
        ),
      ],
    },
    {
      kind: 'formula',
      name: 'joint of 1000 to 1400 N, share 0.2',
      checks: [
        joint('screw at 500 N of lift, high', 1500, () => jointUnder(preloaded, -500).screwForce.high),
        joint('clamp left at 500 N of lift, low', 600, () => jointUnder(preloaded, -500).clampLeft.low),
        joint('screw at 1500 N of lift, open', 1500, () => jointUnder(preloaded, -1500).screwForce.low),
        joint('screw pressed on by 2000 N, low', 600, () => jointUnder(preloaded, 2000).screwForce.low),
      ],
    },
  ],
};
