import { Fault } from '../fault/fault.ts';
import type { Ring } from '../geometry/point.ts';
import { perimeter, ringArea } from '../geometry/region.ts';

/** Mean width over the element size that no mesh has trouble with. */
const WIDE = 0.01;
/** Elements as small as a shape is narrow that its sides may need: about as many nodes, and a second of time. */
const MOST = 20_000;

/**
 * Makes sure that elements which follow the sides of a shape do not become so narrow that they are too many.
 *
 * The mean width of a ring is `2 A / P`. Refused is what is far narrower than the elements asked for, and so long that
 * `P / width` elements are too many.
 *
 * @param base element size away from the shape, mm
 * @throws Fault TOO_LARGE with the path of the shape
 */
export function requireFollowable(ring: Ring, base: number, path: string): void {
  const length = perimeter(ring);
  const width = (2 * Math.abs(ringArea(ring))) / length;
  if (width >= WIDE * base || length <= MOST * width) return;
  throw new Fault(
    'TOO_LARGE',
    `The shape${path === '' ? '' : ` of ${path}`} is ${width.toPrecision(2)} mm wide on average along sides of ${length.toPrecision(3)} mm, so the mesh would need about ${Math.round(length / width)} elements to follow it. Widen, shorten or remove it.`,
    path,
    { value: width, expected: `at least ${Math.min(WIDE * base, length / MOST).toPrecision(2)} mm` },
  );
}
