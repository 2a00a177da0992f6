import { bestFitPlane, type Plane } from './best-fit-plane.ts';
import type { Flatness } from './head-result.ts';
import { minimumZone } from './minimum-zone.ts';

/**
 * Flatness of a set of points after ISO 12781-1: FLTt, FLTp, FLTv and FLTq about the least-squares plane, FLTt about
 * the minimum-zone planes. Distances are normal to the reference plane.
 *
 * The least-squares plane minimises deviations along z. Against deviations along its own normal it differs by a
 * relative `tilt (flatness / extent)` at most: nothing for a plate, whose slopes are thousandths.
 *
 * @param points `[3 * n]` x, y, z of each point, mm
 * @param plane of least squares through them
 */
export function flatness(points: Float64Array, plane = bestFitPlane(points)): Flatness {
  const { bx, by } = plane;
  const { peak, valley, squares } = deviationsAbout(plane, points);
  const cosine = 1 / Math.sqrt(1 + bx * bx + by * by);
  return {
    leastSquares: {
      total: cosine * (peak + valley),
      peak: cosine * peak,
      valley: cosine * valley,
      rms: cosine * Math.sqrt(squares / Math.max(points.length / 3, 1)),
    },
    minimumZone: minimumZone(points, plane),
  };
}

/** Largest deviations from a plane along z, up and down, at least 0, and the sum of their squares. */
export function deviationsAbout({ a, bx, by }: Plane, points: Float64Array) {
  let [peak, valley, squares] = [0, 0, 0];
  for (let i = 0; i < points.length; i += 3) {
    const deviation = points[i + 2] - a - bx * points[i] - by * points[i + 1];
    peak = Math.max(peak, deviation);
    valley = Math.max(valley, -deviation);
    squares += deviation * deviation;
  }
  return { peak, valley, squares };
}
