import type { Point } from '../geometry/point.ts';
import type { CompiledHead } from '../model/compile.ts';
import type { PlateSolution } from '../structure/solution.ts';

/** A part of a seat that bears or lifts off as one. */
export interface SeatCellResult {
  /** Its centre of area. */
  readonly at: Point;
  /** mm2 */
  readonly area: number;
  /** Force on the head along +z, N; not negative. */
  readonly force: number;
  /** Average deflection of the head over it, mm. */
  readonly w: number;
  /** False where the head has lifted off. */
  readonly bears: boolean;
}

/** A pad or land of the board in one load case. */
export interface SeatResult {
  readonly name: string;
  /** Contact force on the head along +z, N. */
  readonly force: number;
  /** Largest contact pressure of a cell, MPa. */
  readonly pressure: number;
  /** Share of its area that the head has lifted off, 0 to 1. */
  readonly lifted: number;
  /** Centre of the part that it has lifted off; `null` where it bears all over. */
  readonly liftedAround: Point | null;
  readonly cells: readonly SeatCellResult[];
}

/** What each seat carries, and where the head has lifted off it. */
export function seatResults({ fasteners, seats }: CompiledHead, solved: PlateSolution): SeatResult[] {
  let next = fasteners.length;
  return seats.map(({ name, cells: placed }) => {
    const cells = placed.map(({ at, area }): SeatCellResult => {
      const i = next++;
      return { at, area, force: solved.reactions[i], w: solved.seats[i], bears: !solved.letGo.has(i) };
    });
    const sum = (value: (cell: SeatCellResult) => number) => cells.reduce((total, cell) => total + value(cell), 0);
    /** Integral over the part that has lifted off. */
    const off = (value: (cell: SeatCellResult) => number) => sum((cell) => (cell.bears ? 0 : value(cell) * cell.area));
    const gone = off(() => 1);
    return {
      name,
      force: sum(({ force }) => force),
      pressure: Math.max(...cells.map(({ force, area }) => force / area)),
      lifted: gone / sum(({ area }) => area),
      liftedAround: gone === 0 ? null : [off(({ at }) => at[0]) / gone, off(({ at }) => at[1]) / gone],
      cells,
    };
  });
}
