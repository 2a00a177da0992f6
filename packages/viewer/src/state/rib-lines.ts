import { type HeadModel, type Point, type Rib, type Ring, siteLayout, sitePitch } from '@flathead/solver';
import { boxOf } from './shape-box.ts';

/** Middle line of a rib in plan, mm. */
export interface RibLine {
  readonly from: Point;
  readonly to: Point;
}

/** Middles of the gaps between columns or rows, in the order in which the model counts them; none where sites are ill. */
export function gapMiddles({ sites }: HeadModel, between: 'columns' | 'rows'): number[] {
  try {
    const axis = between === 'columns' ? 0 : 1;
    const count = sites[between];
    const pitch = sitePitch(sites)[axis];
    const first = siteLayout(sites)[0].centre[axis];
    const sense = axis === 0 ? 1 : -1;
    return Array.from({ length: count - 1 }, (_, gap) => first + sense * (gap + 0.5) * pitch);
  } catch {
    return [];
  }
}

/** Middle lines that one entry of the model stands for: itself, or one in each gap, across the window of the frame. */
export function ribLines(model: HeadModel, rib: Rib): RibLine[] {
  if ('from' in rib) return [{ from: rib.from, to: rib.to }];
  if (model.frame === undefined) return [];
  const { window } = model.frame;
  const [width, height] = boxOf(window);
  const [cx, cy] = 'polygon' in window ? [0, 0] : (window.centre ?? [0, 0]);
  const skipped = new Set(rib.skip ?? []);
  return gapMiddles(model, rib.between)
    .filter((_, gap) => !skipped.has(gap + 1))
    .map(
      (at): RibLine =>
        rib.between === 'columns'
          ? { from: [at, cy - height / 2], to: [at, cy + height / 2] }
          : { from: [cx - width / 2, at], to: [cx + width / 2, at] },
    );
}

/** Corners of a rib of a width about its middle line, counter-clockwise. */
export function ribRing({ from, to }: RibLine, width: number): Ring {
  const [nx, ny] = acrossOf({ from, to });
  const h = width / 2;
  return [
    [from[0] - nx * h, from[1] - ny * h],
    [to[0] - nx * h, to[1] - ny * h],
    [to[0] + nx * h, to[1] + ny * h],
    [from[0] + nx * h, from[1] + ny * h],
  ];
}

/** Unit vector to the left of a line. */
export function acrossOf({ from, to }: RibLine): Point {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy) || 1;
  return [-dy / length, dx / length];
}

export function middleOf({ from, to }: RibLine): Point {
  return [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
}
