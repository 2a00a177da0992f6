import { Clipper, EndType, JoinType } from 'clipper2-ts';
import { decimalGrid, fromGrid, toGrid } from './decimal-grid.ts';
import type { Region } from './point.ts';

/**
 * Region grown by `distance` mm on every side, or shrunk when negative; empty when nothing is left.
 *
 * Corners become arcs, so every point of the new outline is `distance` from the old one.
 *
 * @param chord largest rise of an arc above its edge, mm
 */
export function offset(region: Region, distance: number, chord: number): Region {
  const grid = decimalGrid(region);
  const paths = Clipper.inflatePaths(
    toGrid(region, grid),
    distance * grid,
    JoinType.Round,
    EndType.Polygon,
    2,
    chord * grid,
  );
  return fromGrid(paths, grid);
}
