import cdf from '@stdlib/stats-base-dists-normal-cdf';
import quantile from '@stdlib/stats-base-dists-normal-quantile';
import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { Fault } from '../../fault/fault.ts';
import type { PlacedParameter } from '../parameter.ts';
import { type Quantile, quantileOf } from './distribution.ts';
import type { TolerancePlan } from './plan.ts';

/** Independent numbers between 0 and 1 that have one cause in common, such as the lot of a part. */
export interface Cause {
  readonly name: string;
  /** Which of the independent numbers. */
  readonly dimensions: readonly number[];
}

/** From independent numbers between 0 and 1 to the settings of the parameters. */
export interface ScatterModel {
  readonly dimensions: number;
  /** Of everything that scatters by itself; empty where parameters are correlated, since then nothing does. */
  readonly causes: readonly Cause[];
  /** @param u `[dimensions]` independent, uniform, in the open interval from 0 to 1 */
  settings(u: ArrayLike<number>): (number | number[])[];
}

/** A pivot below this means that the correlations contradict each other. */
const LEAST_PIVOT = 1e-9;

/**
 * How the parameters of a plan scatter together. A parameter of several values with `lot` r has normal scores
 * `sqrt(r) z_lot + sqrt(1 - r) z_k`; correlated parameters share normal scores `L z`, `L L^T` their correlations (Gaussian
 * copula).
 *
 * @throws Fault for a distribution or correlations that can't be
 */
export function scatterModel(plan: TolerancePlan, parameters: readonly PlacedParameter[]): ScatterModel {
  const mixing = mixingOf(plan, parameters);
  const causes: Cause[] = [];
  let dimensions = 0;
  const take = (name: string, count: number): number => {
    causes.push({ name, dimensions: Array.from({ length: count }, (_, k) => dimensions + k) });
    dimensions += count;
    return dimensions - count;
  };
  const draws = plan.vary.map(({ distribution, lot }, i) => {
    const { name, targets } = parameters[i];
    const inverse = quantileOf(distribution, name);
    if (lot === undefined || targets.length === 1) {
      const at = take(name, 1);
      return { at, draw: (u: ArrayLike<number>): number | number[] => inverse(u[at]), inverse };
    }
    const common = lot === 0 ? null : take(`${name}, lot`, 1);
    const own = lot === 1 ? null : take(`${name}, each`, targets.length);
    return { at: null, draw: lotDraw(inverse, lot, common, own, targets.length), inverse };
  });
  if (mixing === null) return { dimensions, causes, settings: (u) => draws.map(({ draw }) => draw(u)) };
  return {
    dimensions,
    causes: [],
    settings(u) {
      const score = mixing.map((row) =>
        row.reduce((sum, l, k) => (l === 0 ? sum : sum + l * scoreOf(u[draws[k].at!])), 0),
      );
      return draws.map(({ inverse, at, draw }, i) =>
        at === null || mixing[i].every((l, k) => (k === i) === (l !== 0)) ? draw(u) : inverse(cdf(score[i], 0, 1)),
      );
    },
  };
}

function lotDraw(inverse: Quantile, lot: number, common: number | null, own: number | null, count: number) {
  return (u: ArrayLike<number>): number[] =>
    Array.from({ length: count }, (_, k) => {
      const shared = common === null ? 0 : Math.sqrt(lot) * scoreOf(u[common]);
      return inverse(cdf(shared + (own === null ? 0 : Math.sqrt(1 - lot) * scoreOf(u[own + k])), 0, 1));
    });
}

function scoreOf(u: number): number {
  return quantile(u, 0, 1);
}

/** Lower triangle L of the correlations between parameters, or null without any. */
function mixingOf(
  { vary, correlations = [] }: TolerancePlan,
  parameters: readonly PlacedParameter[],
): number[][] | null {
  if (correlations.length === 0) return null;
  const names = parameters.map(({ name }) => name);
  const matrix = Matrix.eye(names.length, names.length);
  for (const { between, rho } of correlations) {
    const [i, j] = between.map((name) => names.indexOf(name));
    const unknown = i < 0 ? between[0] : j < 0 ? between[1] : null;
    if (unknown !== null || i === j)
      throw new Fault(
        'SCHEMA',
        `A correlation is between "${between.join('" and "')}"; it takes two different parameters of the plan: ${names.join(', ')}.`,
        'correlations',
        { value: unknown ?? between[0], expected: names },
      );
    const split = [i, j].find((k) => vary[k].lot !== undefined && parameters[k].targets.length > 1);
    if (split !== undefined)
      throw new Fault(
        'SCHEMA',
        `"${names[split]}" scatters value by value ("lot"), so it can't be correlated with another parameter as well. Drop one of the two.`,
        'correlations',
        { value: names[split] },
      );
    matrix.set(i, j, rho).set(j, i, rho);
  }
  const lower = new CholeskyDecomposition(matrix);
  // The decomposition takes what is not positive for zero: look at the pivots.
  const L = lower.lowerTriangularMatrix.to2DArray();
  if (!lower.isPositiveDefinite() || L.some((row, i) => row[i] ** 2 < LEAST_PIVOT))
    throw new Fault(
      'OUT_OF_RANGE',
      'The correlations contradict each other: no parameters can be correlated like this. Bring them closer to zero.',
      'correlations',
      { value: correlations, expected: 'a positive definite matrix' },
    );
  return L;
}
