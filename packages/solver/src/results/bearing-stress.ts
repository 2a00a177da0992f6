import type { Point } from '../geometry/point.ts';
import { barycentric, type Locator, locate } from '../mesh/locate.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { Rigidity } from '../section/rigidity.ts';
import type { Face } from './face-stress.ts';
import type { StressPart } from './stress-part.ts';

/**
 * Radius over which a load on a disc counts in a plate: `sqrt(1.6 r0^2 + t^2) - 0.675 t` for r0 < t/2, else r0. Under a
 * smaller disc the stress in the plate's middle stays finite, which plate theory does not see (Roark's Formulas,
 * Table 11.2).
 *
 * @param radius of the disc, mm
 * @param thickness of the plate, mm
 */
export function equivalentRadius(radius: number, thickness: number): number {
  return radius < thickness / 2 ? Math.sqrt(1.6 * radius ** 2 + thickness ** 2) - 0.675 * thickness : radius;
}

/** A place where a part is pressed on: the moments of plate theory grow without bound towards it. */
export interface Bearing {
  /** Index of the fastener. */
  readonly fastener: number;
  readonly at: Point;
  /** Equivalent radius, mm. */
  readonly radius: number;
  /** Points on the circle of that radius where the part is: triangle and barycentric coordinates. */
  readonly ring: readonly { readonly triangle: number; readonly weight: readonly [number, number, number] }[];
}

const RING = 16;

/**
 * A bearing on a part; `null` where the part is not.
 *
 * @param diameter of the bearing disc, mm
 */
export function bearingOn(
  { mesh, section, layers }: StressPart,
  locator: Locator,
  fastener: number,
  at: Point,
  diameter: number,
): Bearing | null {
  const home = locate(locator, at[0], at[1]);
  const under = home < 0 ? [] : layers[section[home]];
  if (under.length === 0) return null;
  const radius = equivalentRadius(diameter / 2, under[0].depth);
  const ring = Array.from({ length: RING }, (_, k) => {
    const angle = (2 * Math.PI * (k + 0.5)) / RING;
    const [x, y] = [at[0] + radius * Math.cos(angle), at[1] + radius * Math.sin(angle)];
    const triangle = locate(locator, x, y);
    return { triangle, weight: barycentric(mesh, Math.max(0, triangle), x, y) };
  }).filter(({ triangle }) => triangle >= 0 && layers[section[triangle]].length > 0);
  return ring.length === 0 ? null : { fastener, at, radius, ring };
}

/** `[nNodes]` index of the bearing on whose equivalent disc each node lies, else -1. */
export function discsOver({ x, y }: Mesh, bearings: readonly Bearing[]): Int16Array {
  const discs = new Int16Array(x.length).fill(-1);
  bearings.forEach(({ at, radius }, index) => {
    for (let v = 0; v < discs.length; v++) if (Math.hypot(x[v] - at[0], y[v] - at[1]) < radius) discs[v] = index;
  });
  return discs;
}

/** `[nTriangles]` index of the bearing whose disc a corner of each triangle lies on, else -1. */
export function coveredBy({ triangles }: Mesh, discs: Int16Array): Int16Array {
  return new Int16Array(triangles.length / 3).map((_, t) =>
    Math.max(discs[triangles[3 * t]], discs[triangles[3 * t + 1]], discs[triangles[3 * t + 2]]),
  );
}

/** Stress on one face of a layer under a bearing. */
export interface BearingFace {
  /** `[3]` sxx, syy, sxy, MPa. */
  readonly stress: Float64Array;
  readonly face: Face;
}

/**
 * Stress on both faces of each layer in the middle of a bearing whose reaction R is spread over its equivalent disc.
 *
 * Moments at the middle of a disc of radius c are their mean on its circle, where the reaction's own part turns with the
 * angle and averages out, plus `(1 + nu) R/(8 pi)` in every direction: the Laplacian of mxx + myy is -(1 + nu) q with
 * q = R/(pi c^2). As a curvature that is `R/(8 pi D11)`.
 *
 * @param rigidities by section
 * @param stress from `faceStresses`
 * @param reaction force on the plate along +z, N
 */
export function bearingFaces(
  { section, layers, places, placeAt }: StressPart,
  { ring }: Bearing,
  rigidities: readonly Rigidity[],
  stress: Float64Array,
  reaction: number,
): BearingFace[] {
  const count = Math.max(...ring.map(({ triangle }) => layers[section[triangle]].length));
  return Array.from({ length: 2 * count }, (_, k): BearingFace => {
    const layer = k >> 1;
    const face = k % 2 === 0 ? 0 : 1;
    const sum = new Float64Array(3);
    const points = ring.filter(({ triangle }) => layers[section[triangle]].length > layer);
    for (const { triangle, weight } of points) {
      for (let c = 0; c < 3; c++) {
        const at = 6 * (placeAt[3 * triangle + c] + layer) + 3 * face;
        for (let m = 0; m < 3; m++) sum[m] += weight[c] * stress[at + m];
      }
      const { stiffness, faces } = places.layer[placeAt[3 * triangle] + layer];
      const kappa = reaction / (8 * Math.PI * rigidities[section[triangle]].bending[0]);
      const under = (stiffness[0] + stiffness[1]) * faces[face] * kappa;
      sum[0] += under;
      sum[1] += under;
    }
    return { stress: sum.map((value) => value / points.length), face };
  });
}
