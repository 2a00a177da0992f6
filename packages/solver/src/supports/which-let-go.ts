/// <reference path="./quadprog.d.ts" />
import { solveQP } from 'quadprog';
import type { Equilibrium } from './equilibrium.ts';

/**
 * Indices of the one-way supports whose force is zero at the minimum of the complementary energy; `null` when no forces
 * that have their sense balance the loads.
 *
 * The forces minimise `lambda' (G + 1/k) lambda / 2 + lambda' C u_f` among those that balance the loads and have their
 * sense: a convex quadratic program, solved by the dual active-set method (Goldfarb and Idnani 1983).
 *
 * @param senses sign of the force that each support can exert on the plate; 0 = either
 * @param small force, N, that counts as none. A support may hold by that much the wrong way, each by a little more than
 *   the one before: where forces are exactly zero, as in a symmetric head or one that is only warmed, the method would
 *   otherwise choose among constraints by rounding, and stray.
 */
export function whichLetGo(
  { supports, scale, compliance: G }: Equilibrium,
  senses: readonly number[],
  seat: Float64Array,
  resultant: Float64Array,
  small: number,
): ReadonlySet<number> | null {
  const m = supports.length;
  const r = resultant.length;
  const oneWay = senses.flatMap((sense, i) => (sense === 0 ? [] : [i]));
  const fromOne = <T>(values: readonly T[]): T[] => [undefined as T, ...values];
  const rows = supports.map((_, i) => i);

  // Unknown are forces over their scale: D has a unit diagonal.
  const D = rows.map((i) => {
    const { stiffness } = supports[i].support;
    const own = (j: number) => (i === j && stiffness !== null ? 1 / stiffness : 0);
    return fromOne(rows.map((j) => scale[i] * (G[i * m + j] + own(j)) * scale[j]));
  });
  const d = rows.map((i) => -scale[i] * seat[i]);
  const A = rows.map((i) =>
    fromOne([
      ...Array.from(resultant, (_, k) => scale[i] * supports[i].motion[k] * scale[m + k]),
      ...oneWay.map((one) => (one === i ? senses[i] : 0)),
    ]),
  );
  const b = [
    ...Array.from(resultant, (value, k) => -scale[m + k] * value),
    ...oneWay.map((i, rank) => (-small * (1 + rank / oneWay.length)) / scale[i]),
  ];
  const { iact, message } = solveQP(fromOne(D), fromOne(d), fromOne(A), fromOne(b), r);
  if (message !== '') return null;
  return new Set(iact.filter((constraint) => constraint > r).map((constraint) => oneWay[constraint - r - 1]));
}
