import type { Point, Shape } from '@flathead/solver';
import { fieldText } from '../format/number.ts';

/** Corners of a polygon that are written out; more would bury the rest. */
const MOST_CORNERS = 40;

/** `72 × 46 mm, corners R 2, centre 0, 31`. */
export function shapeWords(shape: Shape): string {
  if ('polygon' in shape) {
    const corners = shape.polygon.slice(0, MOST_CORNERS).map(pairWords).join('; ');
    const left = shape.polygon.length - MOST_CORNERS;
    return `polygon of ${shape.polygon.length} corners, mm: ${corners}${left > 0 ? `; and ${left} more in the model file` : ''}`;
  }
  const where = shape.centre === undefined ? '' : `, centre ${pairWords(shape.centre)}`;
  if ('circle' in shape) return `Ø ${plain(shape.circle)} mm${where}`;
  const corner = shape.corner ? `, corners R ${plain(shape.corner)}` : '';
  return `${times(shape.rectangle)} mm${corner}${where}`;
}

/** `-50, 31`. */
export function pairWords([x, y]: Point): string {
  return `${plain(x)}, ${plain(y)}`;
}

/** `5.6 × 7.35`. */
export function times([x, y]: Point): string {
  return `${plain(x)} × ${plain(y)}`;
}

/** A value of the model as it was entered, with a true minus sign. */
export function plain(value: number): string {
  return fieldText(value).replace('-', '\u2212');
}
