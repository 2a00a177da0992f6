import { Fault } from '../fault/fault.ts';
import { arrange } from './arrangement.ts';
import type { MeshDomain } from './domain.ts';
import type { Mesh } from './mesh.ts';
import { smallestAngle } from './quality.ts';
import { refine } from './refine.ts';
import { sampleSegments, tooManyNodes } from './sample-segments.ts';
import type { SizeField } from './size-field.ts';
import { triangulate } from './triangulate.ts';
import { nextEdge, type Triangulation } from './triangulation.ts';

export interface MeshOptions {
  /** Angle that every triangle is refined to, degrees, unless a corner of the input is sharper; 25 if left out. */
  readonly minAngle?: number;
  /** Nodes beyond which the domain is refused; 400,000 if left out. */
  readonly maxNodes?: number;
  /** How far a region's edge may move to meet what is beside it, over the wanted size there; 0.01 if left out. */
  readonly merge?: number;
}

/** Angle that refinement always reaches away from sharp corners (Ruppert 1995), degrees. */
const PROVEN_ANGLE = 20;

/**
 * Meshes a domain with triangles of the wanted size that follow the outline and every region.
 *
 * The outline keeps its area to rounding. No angle is below 25 degrees except between the sides of sharper corners of
 * the input. Should refinement to `minAngle` not end, 20 degrees is what is kept to.
 * Deterministic: the same domain gives the same mesh.
 *
 * @throws Fault TOO_LARGE before the node limit is passed; MESH when edges that nearly coincide cannot be followed
 */
export function meshDomain(domain: MeshDomain, size: SizeField, options: MeshOptions = {}): Mesh {
  const { minAngle = 25, maxNodes = 400_000, merge = 0.01 } = options;
  const arrangement = arrange(domain, (x, y) => merge * size(x, y));
  const sampled = sampleSegments(arrangement, size, maxNodes);
  const refined = (angle: number): Triangulation => {
    const mesh = triangulate(arrangement, sampled);
    const { nodes, at } = estimatedNodes(mesh, size);
    if (!(nodes <= maxNodes)) throw tooManyNodes(nodes, maxNodes, at);
    refine(mesh, { size, minAngle: angle, maxNodes, extent: longerSide(mesh) });
    return mesh;
  };
  try {
    return frozen(refined(minAngle));
  } catch (thrown) {
    if (!(thrown instanceof Fault && thrown.code === 'MESH') || minAngle <= PROVEN_ANGLE) throw thrown;
    return frozen(refined(PROVEN_ANGLE));
  }
}

/** Points at which the size is read in all, at least. */
const READINGS = 2000;

/** Nodes that elements of the wanted size give, 2 / sqrt(3) / size^2 per area, and where they are densest. */
function estimatedNodes(mesh: Triangulation, size: SizeField) {
  const { x, y, origin, triangles } = mesh;
  const areas = Float64Array.from({ length: triangles }, (_, t) => {
    const [a, b, c] = [origin[3 * t], origin[3 * t + 1], origin[3 * t + 2]];
    return ((x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a])) / 2;
  });
  const total = areas.reduce((sum, area) => sum + area, 0);
  let nodes = 0;
  let finest = Infinity;
  let at: readonly [number, number] = [0, 0];
  for (let t = 0; t < triangles; t++) {
    const [a, b, c] = [origin[3 * t], origin[3 * t + 1], origin[3 * t + 2]];
    const n = Math.max(1, Math.ceil(Math.sqrt((READINGS * areas[t]) / total)));
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) {
        // Middle of each of the n^2 equal parts, those that stand on their tip folded over.
        const flipped = i + j >= n;
        const [u, v] = flipped ? [n - i - 1 / 3, n - j - 1 / 3] : [i + 1 / 3, j + 1 / 3];
        const px = x[a] + (u / n) * (x[b] - x[a]) + (v / n) * (x[c] - x[a]);
        const py = y[a] + (u / n) * (y[b] - y[a]) + (v / n) * (y[c] - y[a]);
        const wanted = size(px, py);
        nodes += (areas[t] * 2) / (n * n * Math.sqrt(3) * wanted * wanted);
        if (wanted < finest) [finest, at] = [wanted, [px, py]];
      }
  }
  return { nodes, at };
}

function longerSide({ x, y }: Triangulation): number {
  let [xmin, ymin, xmax, ymax] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let v = 0; v < x.length; v++) {
    xmin = Math.min(xmin, x[v]);
    xmax = Math.max(xmax, x[v]);
    ymin = Math.min(ymin, y[v]);
    ymax = Math.max(ymax, y[v]);
  }
  return Math.max(xmax - xmin, ymax - ymin);
}

function frozen(mesh: Triangulation): Mesh {
  const x = mesh.x.slice(0, mesh.nodes);
  const y = mesh.y.slice(0, mesh.nodes);
  const triangles = Uint32Array.from(mesh.origin.subarray(0, 3 * mesh.triangles));
  const boundary: number[] = [];
  for (let e = 0; e < triangles.length; e++) if (mesh.twin[e] < 0) boundary.push(triangles[e], triangles[nextEdge(e)]);
  return {
    x,
    y,
    triangles,
    region: Uint32Array.from(mesh.region.subarray(0, mesh.triangles)),
    boundary: Uint32Array.from(boundary),
    minAngle: smallestAngle(x, y, triangles, mesh.triangles),
  };
}
