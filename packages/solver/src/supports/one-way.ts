/// <reference path="./quadprog.d.ts" />
import { solveQP } from 'quadprog';
import { Fault } from '../fault/fault.ts';
import type { SupportSolve } from './compliance.ts';
import { type Equilibrium, equilibrium, type Reactions, react } from './equilibrium.ts';

/** Share of the largest force, or of the largest deflection, below which a wrong sign is rounding. */
const ROUNDING = 1e-9;

/** Sign of the force that a support can exert on the plate; 0 = either. */
function senseOf({ support: { acts = 'both' } }: SupportSolve): -1 | 0 | 1 {
  if (acts === 'both') return 0;
  return acts === 'pull' ? -1 : 1;
}

/**
 * Reactions where some supports act one way only: each either exerts a force in its sense or lets go, and then the plate
 * has moved away from it. Forces and gaps of one-way supports are complementary.
 *
 * The forces minimise the complementary energy `lambda' (G + 1/k) lambda / 2 + lambda' C u_f` among those that balance
 * the loads and have their sense: a convex quadratic program, solved by the dual active-set method (Goldfarb and
 * Idnani 1983). It names the supports that let go; the others are then solved for exactly, and signs are proved.
 *
 * @param seat `C u_f`, see {@link react}
 * @param resultant `N^T f`, see {@link react}
 * @throws Fault MECHANISM when no such forces balance the loads: the plate lifts off
 */
export function reactOneWay(system: Equilibrium, seat: Float64Array, resultant: Float64Array): Reactions {
  const { supports, compliance: G } = system;
  const senses = supports.map(senseOf);
  const all = react(system, seat, resultant);
  if (senses.every((sense) => sense === 0)) return all;
  if (hasSense(all.force, senses)) return all;

  const letGo = whichLetGo(system, senses, seat, resultant);
  const kept = supports.map((_, i) => i).filter((i) => !letGo.has(i));
  const held = equilibrium(
    kept.map((i) => supports[i]),
    resultant.length,
    Float64Array.from(kept.flatMap((i) => kept.map((j) => G[i * supports.length + j]))),
  );
  const { force, motion } = react(
    held,
    Float64Array.from(kept, (i) => seat[i]),
    resultant,
  );
  const full = new Float64Array(supports.length);
  kept.forEach((i, k) => {
    full[i] = force[k];
  });
  requireComplementary(supports, G, senses, letGo, full, motion, seat);
  return { force: full, motion, letGo };
}

function hasSense(force: Float64Array, senses: readonly number[]): boolean {
  const least = -ROUNDING * Math.max(...force.map(Math.abs));
  return senses.every((sense, i) => sense === 0 || sense * force[i] >= least);
}

/** Indices of the one-way supports whose force is zero at the minimum of the complementary energy. */
function whichLetGo(
  { supports, scale, compliance: G }: Equilibrium,
  senses: readonly number[],
  seat: Float64Array,
  resultant: Float64Array,
): ReadonlySet<number> {
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
  const b = [...Array.from(resultant, (value, k) => -scale[m + k] * value), ...oneWay.map(() => 0)];
  const { iact, message } = solveQP(fromOne(D), fromOne(d), fromOne(A), fromOne(b), r);
  if (message !== '') {
    const names = oneWay.map((i) => supports[i].support.name);
    throw new Fault(
      'MECHANISM',
      `The plate lifts off: no forces of supports that act one way only (${names.slice(0, 6).join(', ')}) balance the loads. Turn one round, let one act both ways, or add a support.`,
      'supports',
      { supports: names },
    );
  }
  return new Set(iact.filter((constraint) => constraint > r).map((constraint) => oneWay[constraint - r - 1]));
}

/** Forces have their sense, and the plate is clear of the supports that let go. */
function requireComplementary(
  supports: readonly SupportSolve[],
  G: Float64Array,
  senses: readonly number[],
  letGo: ReadonlySet<number>,
  force: Float64Array,
  motion: Float64Array,
  seat: Float64Array,
): void {
  const m = supports.length;
  const w = supports.map((support, i) => {
    let sum = seat[i];
    for (let j = 0; j < m; j++) sum += G[i * m + j] * force[j];
    support.motion.forEach((share, k) => {
      sum += share * motion[k];
    });
    return sum;
  });
  const least = -ROUNDING * Math.max(...w.map(Math.abs), ...seat.map(Math.abs));
  const clear = senses.every((sense, i) => !letGo.has(i) || sense * w[i] >= least);
  if (clear && hasSense(force, senses)) return;
  throw new Fault(
    'INTERNAL',
    'The supports that act one way only could not be told apart into those that hold and those that let go. Please report this model.',
    'supports',
    { letGo: [...letGo].map((i) => supports[i].support.name) },
  );
}
