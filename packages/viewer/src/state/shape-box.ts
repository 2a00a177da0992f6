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

/** Corner radius of a shape, mm: that of a circle is half its width. */
export function cornerOf(shape: Shape): number {
  if ('circle' in shape) return shape.circle / 2;
  return 'rectangle' in shape ? (shape.corner ?? 0) : 0;
}
