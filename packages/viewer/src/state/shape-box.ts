import type { Point, Shape } from '@flathead/solver';

/** Width and height of the box around a shape, mm. */
export function boxOf(shape: Shape): Point {
  if ('rectangle' in shape) return shape.rectangle;
  if ('circle' in shape) return [shape.circle, shape.circle];
  const span = (axis: 0 | 1): number => {
    const values = shape.polygon.map((point) => point[axis]);
    return Math.max(...values) - Math.min(...values);
  };
  return [span(0), span(1)];
}
