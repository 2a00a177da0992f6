import type { Point } from '../../geometry/point.ts';
import { onOneLine } from '../../model/fasteners.ts';
import { BROKEN, type Goal, type Reading } from './goal.ts';
import { gaugeOf } from './measure.ts';
import { reactorOf } from './reactions.ts';
import type { RmsForm } from './rms-form.ts';
import type { Stand } from './stand.ts';
import { witnessesOf } from './witnesses.ts';

/** What a search asks of placements: columns of the stands, by index. */
export interface Judge {
  /**
   * Value of a placement where it is below `below`, exactly; else some value from `below` up, which says no more than that.
   * Lengths in mm, times what they count.
   */
  value(chosen: ArrayLike<number>, below: number): number;
  reading(chosen: ArrayLike<number>): Reading;
  /** Placements asked for, and those among them that were measured over the whole site area. */
  readonly count: { asked: number; measured: number };
}

/**
 * Judges placements by the worst of all stands and load cases. Supports and forces are solved for every placement; the
 * site area is measured only where no witness shows that the placement can't be below `below`.
 *
 * @param stands the same places in the same order on each
 * @param forms root mean square, one for each stand; `null` unless that is the objective
 * @param most supports that a placement may have
 */
export function judgeOf(stands: readonly Stand[], goal: Goal, forms: readonly RmsForm[] | null, most: number): Judge {
  const parts = stands.map((stand) => ({
    stand,
    reactor: reactorOf(stand, most),
    gauge: gaugeOf(stand, goal, most),
    witnesses: witnessesOf(stand, goal),
    planes: stand.ground.cases.map(() => ({ a: 0, bx: 0, by: 0 })),
  }));
  const count = { asked: 0, measured: 0 };
  const all = parts.flatMap((part, s) => part.stand.ground.cases.map((_, index) => ({ part, s, index })));
  // The load case that rejected last is looked at first.
  const order = all.slice();
  return { value, reading, count };

  function value(chosen: ArrayLike<number>, below: number): number {
    count.asked++;
    for (const { reactor } of parts) if (!reactor.solve(chosen)) return Infinity;
    if (forms !== null)
      return all.reduce((most, { part, s, index }) => Math.max(most, forms[s].rms(part.reactor, index)), 0);
    for (let i = 0; i < order.length; i++) {
      const { part, index } = order[i];
      const { reactor, gauge, witnesses, planes } = part;
      planes[index] = gauge.plane(reactor, reactor.cases[index]);
      const bound = witnesses.bound(reactor, index, planes[index], below);
      if (bound < below) continue;
      if (i > 0) [order[i - 1], order[i]] = [order[i], order[i - 1]];
      return bound;
    }
    if (onOneLine(positions(chosen))) return Infinity;
    count.measured++;
    let [worst, used] = [0, 0];
    for (const { part, index } of order) {
      const measured = part.gauge.measure(part.reactor, index, goal.flatness > 0);
      const own = Math.max(goal.bow * measured.bow, goal.flatness * measured.flatness);
      if (own > worst) part.witnesses.learn(index, measured);
      worst = Math.max(worst, own);
      used = Math.max(used, measured.used);
      if (worst >= below) return worst;
    }
    return used > 1 ? BROKEN * used : worst;
  }

  /** Of all fasteners of a placement, fixed ones too. */
  function positions(chosen: ArrayLike<number>): Point[] {
    const { columns, fixed } = stands[0];
    return [...columns.slice(0, fixed), ...Array.from(chosen, (column) => columns[column])].map(
      ({ place }) => place.at,
    );
  }

  function reading(chosen: ArrayLike<number>): Reading {
    const nothing = { value: Infinity, bow: Infinity, flatness: Infinity, rms: Infinity, case: '', used: Infinity };
    if (goal.objective !== 'rms' && onOneLine(positions(chosen))) return nothing;
    for (const { reactor } of parts) if (!reactor.solve(chosen)) return nothing;
    let [worst, bow, flatness, rms, used, name] = [-1, 0, 0, 0, 0, ''];
    for (const { part, s, index } of all) {
      const own = forms === null ? part.gauge.measure(part.reactor, index, true) : null;
      const root = forms === null ? 0 : forms[s].rms(part.reactor, index);
      const value = own === null ? root : Math.max(goal.bow * own.bow, goal.flatness * own.flatness);
      bow = Math.max(bow, own?.bow ?? 0);
      flatness = Math.max(flatness, own?.flatness ?? 0);
      rms = Math.max(rms, root);
      used = Math.max(used, own?.used ?? 0);
      if (value > worst) {
        worst = value;
        const { ground } = part.stand;
        name = ground.label === '' ? ground.cases[index].name : `${ground.cases[index].name}, ${ground.label}`;
      }
    }
    return { value: used > 1 ? BROKEN * used : worst, bow, flatness, rms, case: name, used };
  }
}
