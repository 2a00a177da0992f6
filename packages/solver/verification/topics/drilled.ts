import { drilledCompliance } from '../../src/section/drilled.ts';
import type { HoleArray } from '../../src/section/hole-array.ts';
import { holePeaks, peakTension } from '../../src/section/hole-concentration.ts';
import type { FormulaModel, PlateModel, Topic } from '../check.ts';
import { type Acceptance, derived, type Evidence, published } from '../evidence.ts';
import { check, E, middle, posed, units } from '../posed.ts';
import { onEnds, strip } from '../strips.ts';

const cell: Acceptance = { tolerance: 0.005, why: 'unit cells give +-0.001 of the solid: 0.5 %' };
const thick = derived('periodic unit cell in generalised plane strain, quadratic finite elements, nu = 0.3', cell);
const uhx = published('ASME BPVC VIII-1, UHX-11, triangular, h/p >= 2 (transcription)', {
  tolerance: 0.01,
  why: 'quartics fitted to their own computations: 1 %',
});
const peaks = derived('periodic unit cell, quadratic finite elements', cell);

const array = (pattern: HoleArray['pattern'], mu: number): HoleArray => ({ pitch: 1, diameter: 1 - mu, pattern });
const compliance = (pattern: HoleArray['pattern'], mu: number) => drilledCompliance(array(pattern, mu), 0.3, 'holes');

const along = (pattern: HoleArray['pattern'], mu: number) => () => 1 / compliance(pattern, mu).S11;
const diagonal = (mu: number) => () => {
  const { S11, S12, S66 } = compliance('square', mu);
  return 4 / (2 * S11 + 2 * S12 + S66);
};
const poisson = (mu: number) => () => {
  const { S11, S12 } = compliance('triangular', mu);
  return -S12 / S11;
};

const number = (quantity: string, unit: string, expected: number, from: Evidence, read: () => number) =>
  check(quantity, unit, 1, expected, from, read, cell);

const square = (mu: number, alongRows: number, across: number): FormulaModel => ({
  kind: 'formula',
  name: `square array, ligament ${mu}, long holes`,
  checks: [
    number('E along the rows', 'E', alongRows, thick, along('square', mu)),
    number('E along the diagonal', 'E', across, thick, diagonal(mu)),
  ],
});

const quartic = (coefficients: readonly number[], mu: number) =>
  coefficients.reduce((sum, c, k) => sum + c * mu ** k, 0);
const triangular = (mu: number): FormulaModel => ({
  kind: 'formula',
  name: `triangular array, ligament ${mu}, long holes`,
  checks: [
    number('E', 'E', quartic([-0.0029, 0.2126, 3.9906, -6.173, 3.4307], mu), uhx, along('triangular', mu)),
    number('nu', '1', quartic([0.9966, -4.1978, 9.0478, -7.9955, 2.2398], mu), uhx, poisson(mu)),
  ],
});

const edge = (pattern: HoleArray['pattern'], mu: number, xx: number, yy: number) => () =>
  peakTension(holePeaks(array(pattern, mu)), xx, yy, 0);

/** A narrow drilled strip on its ends: a beam of the modulus along it. */
function drilledStrip(degrees: 0 | 45, modulus: number): PlateModel {
  const [length, width, t, force] = [80, 2, 2, 40];
  const holes = { pitch: 0.4, diameter: 0.24, pattern: 'square' as const, angle: degrees };
  const EI = (E * width * t ** 3) / 12;
  return posed(
    `narrow drilled strip, rows at ${degrees} degrees, ligament 0.4`,
    {
      plate: 1,
      outline: strip(length, width),
      section: { E, nu: 0.3, thickness: t, holes },
      edges: onEnds(length, width),
      loads: [{ over: 'all', force }],
    },
    0.5,
    [
      units('5 W L^3/(384 E I)', (5 * force * length ** 3) / (384 * EI), '', 1).w(
        'in the middle',
        middle,
        1 / modulus,
        {
          ...thick,
          accepted: {
            tolerance: 0.01,
            why: 'unit cells 0.5 %, and 0.5 % for the ends that keep the strip from warping',
          },
        },
      ),
    ],
  );
}

export const drilledFields: Topic = {
  name: 'drilled fields',
  about: 'Effective constants of arrays of long holes over those of the solid, nu = 0.3, and stress at hole edges.',
  models: [
    square(0.2, 0.3111, 0.1227),
    square(0.3, 0.4196, 0.2389),
    square(0.4, 0.5252, 0.3799),
    square(0.5, 0.63, 0.5323),
    square(0.6, 0.7338, 0.6809),
    triangular(0.25),
    triangular(0.4),
    triangular(0.55),
    drilledStrip(0, 0.5252),
    drilledStrip(45, 0.3799),
    {
      kind: 'formula',
      name: 'stress at the edge of a hole over gross stress',
      checks: [
        number('square, ligament 0.3, biaxial', 'gross stress', 4.07, peaks, edge('square', 0.3, 1, 1)),
        number('square, ligament 0.5, along the pitch', 'gross stress', 3.28, peaks, edge('square', 0.5, 1, 0)),
        number('triangular, ligament 0.3, biaxial', 'gross stress', 3.97, peaks, edge('triangular', 0.3, 1, 1)),
        number('triangular, ligament 0.5, along the pitch', 'gross stress', 4.41, peaks, edge('triangular', 0.5, 1, 0)),
      ],
    },
  ],
};
