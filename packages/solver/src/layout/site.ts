import type { Point } from '../geometry/point.ts';

/** One site of the head: rows are lettered from the far (+y) side, columns numbered along +x, so `B3` is row 2, column 3. */
export interface Site {
  readonly name: string;
  readonly row: number;
  readonly column: number;
  readonly centre: Point;
  /** Extent of its probe field along x and y, mm. */
  readonly field: Point;
}
