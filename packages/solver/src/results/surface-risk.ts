import type { Mesh } from '../mesh/mesh.ts';
import { meanPower } from './mean-power.ts';
import { secondPrincipal } from './plane-stress.ts';
import { tension } from './stress-measure.ts';
import type { StressPart } from './stress-part.ts';

/** Weibull modulus, and the characteristic strength of unit area, MPa. */
export interface Scatter {
  readonly modulus: number;
  readonly strength: number;
}

/**
 * Risk of rupture of a part, `sum_i integral of (sigma_i / sigma_0)^m dA` over the tensile principal stresses on both
 * faces of its layers and along its edges (principle of independent action, ASTM C1239); its failure probability is
 * `1 - exp(-risk)`. Principal stresses are linear between the corners of a triangle and integrated exactly.
 *
 * A drilled layer counts the peak at its hole edges over all of its area, holes included: an upper estimate.
 *
 * @param stress from `faceStresses`
 * @param covered `[nTriangles]` triangles whose faces are left out where not negative; all count if left out
 */
export function surfaceRisk(part: StressPart, stress: Float64Array, scatter: Scatter, covered?: Int16Array): number {
  return faceRisk(part, stress, scatter, covered) + edgeRisk(part, stress, scatter);
}

function faceRisk(
  { mesh, section, layers, places, placeAt }: StressPart,
  stress: Float64Array,
  { modulus, strength }: Scatter,
  covered: Int16Array | undefined,
): number {
  const count = places.corner.length;
  const first = new Float64Array(2 * count);
  const second = new Float64Array(2 * count);
  for (let p = 0; p < 2 * count; p++) {
    const { holes } = places.layer[p >> 1];
    first[p] = tension(stress, 3 * p, holes) / strength;
    // The edge of a hole is stressed along itself only.
    second[p] = holes === null ? secondPrincipal(stress, 3 * p) / strength : 0;
  }
  let risk = 0;
  for (let t = 0; t < section.length; t++) {
    const depth = layers[section[t]].length;
    if (depth === 0 || (covered !== undefined && covered[t] >= 0)) continue;
    let mean = 0;
    for (let k = 0; k < 2 * depth; k++) {
      const a = 2 * placeAt[3 * t] + k;
      const b = 2 * placeAt[3 * t + 1] + k;
      const c = 2 * placeAt[3 * t + 2] + k;
      mean += meanPower(first[a], first[b], first[c], modulus) + meanPower(second[a], second[b], second[c], modulus);
    }
    risk += mean * areaOf(mesh, t);
  }
  return risk;
}

/** Edges are stressed along themselves, linear through each layer. */
function edgeRisk(
  { mesh, places, placeAt, layers, section, edges }: StressPart,
  stress: Float64Array,
  { modulus, strength }: Scatter,
): number {
  const { x, y, triangles } = mesh;
  let risk = 0;
  for (const side of edges) {
    const next = side % 3 === 2 ? side - 2 : side + 1;
    const [dx, dy] = [x[triangles[next]] - x[triangles[side]], y[triangles[next]] - y[triangles[side]]];
    const length = Math.hypot(dx, dy);
    const [c, s] = [dx / length, dy / length];
    const along = (corner: number, layer: number, face: number): number => {
      const at = 6 * (placeAt[corner] + layer) + 3 * face;
      return (c * c * stress[at] + s * s * stress[at + 1] + 2 * c * s * stress[at + 2]) / strength;
    };
    for (let k = 0; k < layers[section[Math.floor(side / 3)]].length; k++) {
      const corners = [along(side, k, 0), along(next, k, 0), along(next, k, 1), along(side, k, 1)];
      const middle = (corners[0] + corners[1] + corners[2] + corners[3]) / 4;
      const [lower, upper] = places.layer[placeAt[side] + k].faces;
      const quarter = (length * (upper - lower)) / 4;
      for (let i = 0; i < 4; i++)
        risk += quarter * meanPower(corners[i], corners[i === 3 ? 0 : i + 1], middle, modulus);
    }
  }
  return risk;
}

/** Area of a triangle, mm2. */
export function areaOf({ x, y, triangles }: Mesh, t: number): number {
  const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
  return ((x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a])) / 2;
}
