import type { Mesh } from '../mesh/mesh.ts';
import type { SampleArea } from './sample-areas.ts';

/**
 * Points of an area at which its flatness is read: nodes, and the middles of the sides of its elements with the
 * deflection there, `w = (w_i + w_j) / 2 + (beta_j - beta_i) . e / 8` (see element/deflection.ts). Nodes alone read a dome
 * a twelfth too flat where a site is five elements across.
 *
 * @param u `[3 * nNodes]` w, thetaX, thetaY
 * @returns `[3 * n]` x, y, w, mm
 */
export function areaPoints({ x, y }: Mesh, u: Float64Array, areas: readonly SampleArea[]): Float64Array {
  const count = areas.reduce((sum, { nodes, sides }) => sum + nodes.length + sides.length / 2, 0);
  const points = new Float64Array(3 * count);
  let at = 0;
  const add = (px: number, py: number, w: number): void => {
    points[at] = px;
    points[at + 1] = py;
    points[at + 2] = w;
    at += 3;
  };
  for (const { nodes, sides } of areas) {
    for (const node of nodes) add(x[node], y[node], u[3 * node]);
    for (let s = 0; s < sides.length; s += 2) {
      const [i, j] = [sides[s], sides[s + 1]];
      const bend = (u[3 * j + 2] - u[3 * i + 2]) * (x[j] - x[i]) - (u[3 * j + 1] - u[3 * i + 1]) * (y[j] - y[i]);
      add((x[i] + x[j]) / 2, (y[i] + y[j]) / 2, (u[3 * i] + u[3 * j]) / 2 + bend / 8);
    }
  }
  return points;
}
