import type { Point, Ring } from '@flathead/solver';
import type { PlanWindow } from './plan-raster.ts';

/** The window that shows all of some rings, with a margin around, mm. */
export function planWindow(rings: readonly Ring[], margin: number): PlanWindow {
  const span = (axis: 0 | 1): readonly [number, number] => {
    const places = rings.flatMap((ring) => ring.map((point) => point[axis]));
    return [Math.min(...places) - margin, Math.max(...places) + margin];
  };
  const [[left, right], [bottom, top]] = [span(0), span(1)];
  return { left, top, width: right - left, height: top - bottom };
}

/** Closed rings as path data of a picture whose y runs downwards, mm. */
export function ringPath(rings: readonly Ring[]): string {
  return rings.map((ring) => `M${ring.map(place).join('L')}Z`).join('');
}

/** Pairs of points as path data of separate strokes. */
export function strokePath(points: readonly Point[]): string {
  return points.map((point, i) => `${i % 2 === 0 ? 'M' : 'L'}${place(point)}`).join('');
}

function place([x, y]: Point): string {
  return `${x.toFixed(3)} ${(-y).toFixed(3)}`;
}
