import { barycentric, type Locator, locate, locator, type Mesh } from '@flathead/solver';

/** Reads a nodal field anywhere on the mesh, linear within each triangle as it is drawn. */
export interface FieldSampler {
  /** Deviation at a point, mm; `null` off the mesh. */
  at(x: number, y: number): number | null;
}

const locators = new WeakMap<Mesh, Locator>();

/** The locator of a mesh, built once for each. */
export function locatorOf(mesh: Mesh): Locator {
  const found = locators.get(mesh) ?? locator(mesh);
  locators.set(mesh, found);
  return found;
}

export function fieldSampler(mesh: Mesh, values: Float64Array): FieldSampler {
  const found = locatorOf(mesh);
  return {
    at(x, y) {
      const t = locate(found, x, y);
      if (t < 0) return null;
      const weights = barycentric(mesh, t, x, y);
      return weights.reduce((sum, weight, k) => sum + weight * values[mesh.triangles[3 * t + k]], 0);
    },
  };
}

type Vector = readonly [number, number, number];

/** Steps towards the point where a ray meets the deflected face; each gains a digit or two on slopes as drawn. */
const MOST_STEPS = 6;

/**
 * Where a ray meets a face of the exaggerated plate: at height `z + scale * deviation`.
 *
 * @returns point in the plan, mm, with its deviation; `null` when the ray misses the plate
 */
export function rayOnField(
  sampler: FieldSampler,
  origin: Vector,
  direction: Vector,
  z: number,
  scale: number,
): { readonly x: number; readonly y: number; readonly deviation: number } | null {
  if (Math.abs(direction[2]) < 1e-9) return null;
  let height = z;
  let last: { x: number; y: number; deviation: number } | null = null;
  for (let step = 0; step < MOST_STEPS; step++) {
    const t = (height - origin[2]) / direction[2];
    const [x, y] = [origin[0] + t * direction[0], origin[1] + t * direction[1]];
    const deviation = sampler.at(x, y);
    if (deviation === null) return last;
    last = { x, y, deviation };
    height = z + scale * deviation;
  }
  return last;
}
