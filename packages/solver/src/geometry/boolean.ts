import { Clipper, ClipType, FillRule } from 'clipper2-ts';
import { decimalGrid, fromGrid, toGrid } from './decimal-grid.ts';
import type { Region } from './point.ts';

/** Points in either region. Non-zero rule; outer rings come back counter-clockwise, holes clockwise. */
export function union(a: Region, b: Region = []): Region {
  return combine(ClipType.Union, a, b);
}

/** Points in a that are not in b. */
export function difference(a: Region, b: Region): Region {
  return combine(ClipType.Difference, a, b);
}

/** Points in both regions. */
export function intersection(a: Region, b: Region): Region {
  return combine(ClipType.Intersection, a, b);
}

/** Coordinates are rounded to a decimal grid of 1e-10 of the extent or finer; see {@link decimalGrid}. */
function combine(type: ClipType, a: Region, b: Region): Region {
  const grid = decimalGrid([...a, ...b]);
  return fromGrid(Clipper.booleanOp(type, toGrid(a, grid), toGrid(b, grid), FillRule.NonZero), grid);
}
