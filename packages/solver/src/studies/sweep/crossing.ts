import type { HeadModel } from '../../model/head-model.ts';
import type { Verdict } from '../../results/head-result.ts';
import { bracketedRoot } from '../bracketed-root.ts';
import { beyond, type Figure, judgedOf, orFault } from '../judged.ts';
import { significant } from '../significant.ts';

/** Value of a parameter at which a criterion just passes, the other parameter held. */
export interface Crossing {
  readonly criterion: string;
  readonly parameter: string;
  readonly value: number;
  /** What the numerical error of the figure means for the value; null when it can't be estimated. */
  readonly error: number | null;
  /** Change of the figure with the parameter there. */
  readonly slope: number;
  readonly limit: number;
  /** Whether it passes above or below the value. */
  readonly passes: 'above' | 'below';
  /** The other parameter and where it stands; left out when there is none. */
  readonly at?: { readonly parameter: string; readonly value: number | string | boolean };
}

/** A row on a line along one parameter. */
export interface LinePoint {
  readonly x: number;
  readonly figures: Readonly<Record<string, Figure>>;
}

/** Part of the distance between two rows to which a crossing is solved for. */
const CLOSE = 1e-5;
/** Part of the distance between two rows over which the slope is taken. */
const SLOPE_STEP = 0.05;

/**
 * Crossings of every limit along a line of variants, solved for on the model itself between neighbouring rows on either side
 * of it. The numerical error of a figure over its slope is the error of the crossing.
 *
 * @param points ascending in x
 * @param quick judges the variant at x as the rows were
 * @param thorough the same with its numerical error
 */
export function crossingsAlong(
  parameter: string,
  points: readonly LinePoint[],
  variant: (x: number) => HeadModel,
  quick: (model: HeadModel) => Verdict,
  thorough: (model: HeadModel) => Verdict,
): Crossing[] {
  const found: Crossing[] = [];
  for (const [i, to] of points.entries()) {
    const from = points[i - 1];
    if (from === undefined) continue;
    for (const [criterion, a] of Object.entries(from.figures)) {
      const b = to.figures[criterion];
      if (b === undefined || beyond(a) > 0 === beyond(b) > 0) continue;
      const figureBy = (judge: typeof quick) => (x: number) => judgedOf(judge(variant(x))).figures![criterion];
      // A variant between two good ones may still be impossible: no crossing is said then, rather than a wrong one.
      const solved = orFault(() =>
        solve(criterion, parameter, [from.x, a], [to.x, b], figureBy(quick), figureBy(thorough)),
      );
      if ('criterion' in solved) found.push(solved);
    }
  }
  return found;
}

function solve(
  criterion: string,
  parameter: string,
  [xa, a]: readonly [number, Figure],
  [xb, b]: readonly [number, Figure],
  quick: (x: number) => Figure,
  thorough: (x: number) => Figure,
): Crossing {
  const far = (x: number): number => beyond(quick(x));
  const value = bracketedRoot(far, { x: xa, f: beyond(a) }, { x: xb, f: beyond(b) }, CLOSE * (xb - xa));
  const step = SLOPE_STEP * (xb - xa);
  const [left, right] = [Math.max(xa, value - step), Math.min(xb, value + step)];
  const slope = (quick(right).value - quick(left).value) / (right - left);
  const { error, limit } = thorough(value);
  return {
    criterion,
    parameter,
    value: significant(value),
    error: error === null || slope === 0 ? null : significant(error / Math.abs(slope)),
    slope: significant(slope),
    limit,
    passes: beyond(a) > 0 ? 'above' : 'below',
  };
}
