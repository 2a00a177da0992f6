import { Fault } from '../fault/fault.ts';
import type { SupportSolve } from './compliance.ts';
import { type Equilibrium, equilibrium, type Reactions, react } from './equilibrium.ts';
import { whichLetGo } from './which-let-go.ts';

/** Share of the largest force, or of the largest deflection, below which a wrong sign is rounding. */
const ROUNDING = 1e-9;
/** The same of the largest sum whose terms cancel to a deflection. */
const CANCELLED = 1e-13;
/** Times the rounding by which a sign may be wrong where supports stand so close or so nearly on a line that no set is better. */
const ACCEPTED = 1000;

/** Sign of the force that a support can exert on the plate; 0 = either. */
function senseOf({ support: { acts = 'both' } }: SupportSolve): -1 | 0 | 1 {
  if (acts === 'both') return 0;
  return acts === 'pull' ? -1 : 1;
}

/**
 * Reactions where some supports act one way only: each either exerts a force in its sense or lets go, and then the plate
 * has moved away from it. Forces and gaps of one-way supports are complementary.
 *
 * A quadratic program names the supports that let go, see {@link whichLetGo}; the others are then solved for exactly, and
 * signs are proved. Where one is wrong, the worst changes sides and all is solved again.
 *
 * @param seat `C u_f`, see {@link react}
 * @param resultant `N^T f`, see {@link react}
 * @throws Fault MECHANISM when no such forces balance the loads, so that the plate lifts off; when those which do leave
 *   the plate free to move; or when rounding hides which they are
 */
export function reactOneWay(system: Equilibrium, seat: Float64Array, resultant: Float64Array): Reactions {
  const { supports, scale } = system;
  const senses = supports.map(senseOf);
  const all = react(system, seat, resultant);
  // Force that brings a support back to where it was, should all others be zero.
  const natural = seat.map((w, i) => w * scale[i] ** 2);
  const small = ROUNDING * largest(all.force, natural);
  if (senses.every((sense, i) => sense * all.force[i] >= -small)) return all;

  const oneWay = supports.flatMap(({ support: { name } }, i) => (senses[i] === 0 ? [] : [name]));
  const first = whichLetGo(system, senses, seat, resultant, small);
  if (first === null)
    throw new Fault(
      'MECHANISM',
      `The plate lifts off: no forces of supports that act one way only (${oneWay.slice(0, 6).join(', ')}) balance the loads. Turn one round, let one act both ways, or add a support.`,
      'supports',
      { supports: oneWay },
    );
  const letGo = new Set(first);
  let best: { readonly answer: Reactions; readonly wrong: number } | null = null;
  for (let turn = 0; turn <= 2 * supports.length; turn++) {
    const answer = withoutThose(system, letGo, seat, resultant);
    if (answer === null) break;
    const { support, wrong } = worstSign(system, senses, answer, seat, small);
    if (wrong <= 1) return answer;
    if (best === null || wrong < best.wrong) best = { answer, wrong };
    if (!letGo.delete(support)) letGo.add(support);
  }
  if (best === null)
    throw new Fault(
      'MECHANISM',
      `Nothing says where the plate lies: its loads press it on none or too few of the supports that act one way only (${oneWay.slice(0, 6).join(', ')}). Let one or more of them act both ways, or add a load that presses the plate on them.`,
      'supports',
      { supports: oneWay },
    );
  if (best.wrong <= ACCEPTED) return best.answer;
  throw new Fault(
    'MECHANISM',
    `Rounding decides which of the supports that act one way only (${oneWay.slice(0, 6).join(', ')}) hold: they stand too close together, or too nearly on one line. Move one of them away from the others, or let one act both ways.`,
    'supports',
    { supports: oneWay, wrong: best.wrong },
  );
}

/** Reactions of the supports that have not let go; `null` when these do not hold the plate. */
function withoutThose(
  { supports, compliance: G }: Equilibrium,
  letGo: ReadonlySet<number>,
  seat: Float64Array,
  resultant: Float64Array,
): Reactions | null {
  const m = supports.length;
  const kept = supports.map((_, i) => i).filter((i) => !letGo.has(i));
  const held = heldBy(
    kept.map((i) => supports[i]),
    resultant.length,
    Float64Array.from(kept.flatMap((i) => kept.map((j) => G[i * m + j]))),
  );
  if (held === null) return null;
  const { force, motion } = react(
    held,
    Float64Array.from(kept, (i) => seat[i]),
    resultant,
  );
  const full = new Float64Array(m);
  kept.forEach((i, k) => {
    full[i] = force[k];
  });
  return { force: full, motion, letGo: new Set(letGo) };
}

function heldBy(...given: Parameters<typeof equilibrium>): Equilibrium | null {
  try {
    return equilibrium(...given);
  } catch (thrown) {
    if (thrown instanceof Fault && thrown.code === 'MECHANISM') return null;
    throw thrown;
  }
}

/** The support with the wrong sign that is farthest from rounding, of its force or of its gap; `wrong` in units of rounding. */
function worstSign(
  { supports, compliance: G }: Equilibrium,
  senses: readonly number[],
  { force, motion, letGo }: Reactions,
  seat: Float64Array,
  small: number,
): { support: number; wrong: number } {
  const m = supports.length;
  const terms = supports.map((support, i) => [
    seat[i],
    ...force.map((value, j) => G[i * m + j] * value),
    ...support.motion.map((share, k) => share * motion[k]),
  ]);
  const w = terms.map((each) => each.reduce((sum, term) => sum + term, 0));
  const narrow = Math.max(ROUNDING * largest(w, seat), CANCELLED * largest(...terms));
  const least = Math.max(small, ROUNDING * largest(force));
  let [support, wrong] = [-1, 0];
  senses.forEach((sense, i) => {
    const by = sense === 0 ? 0 : letGo.has(i) ? (-sense * w[i]) / narrow : (-sense * force[i]) / least;
    if (by > wrong) [support, wrong] = [i, by];
  });
  return { support, wrong };
}

function largest(...lists: readonly ArrayLike<number>[]): number {
  return lists.reduce(
    (most, list) => Array.from(list).reduce((size, value) => Math.max(size, Math.abs(value)), most),
    0,
  );
}
