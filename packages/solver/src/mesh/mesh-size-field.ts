import { triangleNeighbours } from './adjacency.ts';
import { barycentric, type Locator, locate } from './locate.ts';
import type { Mesh } from './mesh.ts';
import type { SizeField } from './size-field.ts';

/** Triangles that a search walks through before it is begun anew from the buckets of the locator. */
const STEPS = 60;
/** Barycentric coordinate, below zero, that still counts as on the edge. */
const ON_EDGE = 1e-9;

/**
 * Edge length given at the nodes of a mesh, linear between them. Off the mesh, as between the chords of a finer arc, that
 * of the nearest boundary node counts.
 *
 * @param nodal `[nNodes]` wanted edge length, mm
 * @param growth largest change per unit of distance; larger sizes are lowered to it
 */
export function meshSizeField(mesh: Mesh, locator: Locator, nodal: Float64Array, growth: number): SizeField {
  const size = graded(mesh, nodal, growth);
  const { triangles } = mesh;
  const across = triangleNeighbours(mesh);
  // A mesher asks at one place after another: the triangle of the last answer is near that of the next.
  let last = 0;
  return (x, y) => {
    let t = last;
    for (let step = 0; step < STEPS && t >= 0; step++) {
      const l = barycentric(mesh, t, x, y);
      const least = l[0] < l[1] ? (l[0] < l[2] ? 0 : 2) : l[1] < l[2] ? 1 : 2;
      if (l[least] >= -ON_EDGE) {
        last = t;
        return l[0] * size[triangles[3 * t]] + l[1] * size[triangles[3 * t + 1]] + l[2] * size[triangles[3 * t + 2]];
      }
      // Edge k runs from corner k: the one opposite to corner `least` is the next.
      t = across[3 * t + (least === 2 ? 0 : least + 1)];
    }
    t = locate(locator, x, y);
    if (t < 0) return size[nearest(mesh, x, y)];
    last = t;
    const l = barycentric(mesh, t, x, y);
    return l[0] * size[triangles[3 * t]] + l[1] * size[triangles[3 * t + 1]] + l[2] * size[triangles[3 * t + 2]];
  };
}

/** Lowers sizes until none exceeds that of a neighbour by more than the growth times their distance. */
function graded({ x, y, triangles }: Mesh, nodal: Float64Array, growth: number): Float64Array {
  const size = nodal.slice();
  for (let changed = true; changed; ) {
    changed = false;
    for (let e = 0; e < triangles.length; e++) {
      const i = triangles[e];
      const j = triangles[e % 3 === 2 ? e - 2 : e + 1];
      const step = growth * Math.hypot(x[j] - x[i], y[j] - y[i]);
      const [least, larger] = size[i] < size[j] ? [size[i], j] : [size[j], i];
      if (size[larger] <= (least + step) * (1 + 1e-9)) continue;
      size[larger] = least + step;
      changed = true;
    }
  }
  return size;
}

function nearest({ x, y, boundary }: Mesh, px: number, py: number): number {
  let [best, least] = [0, Infinity];
  for (let e = 0; e < boundary.length; e += 2) {
    const node = boundary[e];
    const distance = (x[node] - px) ** 2 + (y[node] - py) ** 2;
    if (distance < least) [best, least] = [node, distance];
  }
  return best;
}
