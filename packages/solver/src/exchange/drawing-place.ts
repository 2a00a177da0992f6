import { arcOf, type Curve, straightened } from './curve.ts';
import type { Label } from './drawing.ts';
import { type Dropped, extentsOf } from './reading.ts';

/** Coordinates that a head may have, mm. */
const FARTHEST = 1e5;

/** Whether a curve lies where a head may; if not it is dropped. */
export function withinReach({ vertices, line, layer }: Curve, dropped: Dropped[]): boolean {
  const isFar = vertices.some(({ x, y, bulge }, i) => {
    const radius = bulge === 0 ? 0 : arcOf(vertices[i], vertices[i + 1] ?? vertices[0]).radius;
    return !(Math.max(Math.abs(x), Math.abs(y), radius) <= FARTHEST);
  });
  if (!isFar) return true;
  dropped.push({
    line,
    reason: `the curve on layer "${layer}" reaches beyond ${FARTHEST} mm from the origin; check the unit, or move its middle to the origin`,
  });
  return false;
}

/** The middle of the box around all curves moved. */
export function centred(
  curves: readonly Curve[],
  labels: readonly Label[],
  to: readonly [number, number] | undefined,
): [readonly Curve[], readonly Label[]] {
  const box = to === undefined ? null : extentsOf(cornersOn(curves));
  if (to === undefined || box === null) return [curves, labels];
  const [dx, dy] = [to[0] - (box.min[0] + box.max[0]) / 2, to[1] - (box.min[1] + box.max[1]) / 2];
  return [
    curves.map((curve) => ({
      ...curve,
      vertices: curve.vertices.map(({ x, y, bulge }) => ({ x: x + dx, y: y + dy, bulge })),
    })),
    labels.map((label) => ({ ...label, at: [label.at[0] + dx, label.at[1] + dy] as const })),
  ];
}

function* cornersOn(curves: readonly Curve[]): Generator<[number, number]> {
  for (const { vertices, closed } of curves) for (const { x, y } of straightened(vertices, closed, 0.01)) yield [x, y];
}
