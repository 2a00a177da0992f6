import type { Mesh } from '@flathead/solver';

/** The piece of the plan that a picture shows, mm: its upper left corner and its extent. */
export interface PlanWindow {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A field read at the middles of the pixels of a picture, row by row from the top. */
export interface PlanRaster {
  readonly columns: number;
  readonly rows: number;
  /** `[columns * rows]` NaN off the plate. */
  readonly values: Float32Array;
}

/**
 * Reads a nodal field at the pixels of a picture of the plan, linear within each triangle.
 *
 * A pixel belongs to the triangle that holds its middle; on an edge to the last of the two, which agree there.
 *
 * @param values `[nNodes]`
 */
export function planRaster(
  { x, y, triangles }: Mesh,
  values: Float64Array,
  window: PlanWindow,
  columns: number,
  rows: number,
): PlanRaster {
  const out = new Float32Array(columns * rows).fill(Number.NaN);
  // Plan to pixel coordinates, in which the middle of a pixel has whole numbers.
  const px = scaled(x, columns / window.width, -window.left);
  const py = scaled(y, -rows / window.height, -window.top);
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t];
    const b = triangles[t + 1];
    const c = triangles[t + 2];
    const xa = px[a];
    const xb = px[b];
    const xc = px[c];
    const left = Math.max(0, Math.ceil(Math.min(xa, xb, xc)));
    const right = Math.min(columns - 1, Math.floor(Math.max(xa, xb, xc)));
    if (left > right) continue;
    const ya = py[a];
    const yb = py[b];
    const yc = py[c];
    const top = Math.max(0, Math.ceil(Math.min(ya, yb, yc)));
    const bottom = Math.min(rows - 1, Math.floor(Math.max(ya, yb, yc)));
    if (top > bottom) continue;
    const twice = (xb - xa) * (yc - ya) - (xc - xa) * (yb - ya);
    if (twice === 0) continue;
    // Barycentric weights of b and c are linear in the pixel: w = w0 + wx i + wy j.
    const bx = (yc - ya) / twice;
    const by = -(xc - xa) / twice;
    const cx = -(yb - ya) / twice;
    const cy = (xb - xa) / twice;
    const va = values[a];
    const vb = values[b] - va;
    const vc = values[c] - va;
    for (let j = top; j <= bottom; j++) {
      let wb = (left - xa) * bx + (j - ya) * by;
      let wc = (left - xa) * cx + (j - ya) * cy;
      for (let i = left; i <= right; i++) {
        if (wb >= -EDGE && wc >= -EDGE && wb + wc <= 1 + EDGE) out[j * columns + i] = va + wb * vb + wc * vc;
        wb += bx;
        wc += cx;
      }
    }
  }
  return { columns, rows, values: out };
}

/** Places along an axis as pixels: half a pixel less, so that its middle has a whole number. */
function scaled(places: Float64Array, by: number, shift: number): Float64Array {
  const out = new Float64Array(places.length);
  for (let i = 0; i < out.length; i++) out[i] = (places[i] + shift) * by - 0.5;
  return out;
}

/** What a weight may lack on an edge by rounding. */
const EDGE = 1e-9;

/** One field less another, of two heads in the same window; NaN where either is missing. */
export function rasterDifference(a: PlanRaster, b: PlanRaster): PlanRaster {
  return { ...a, values: a.values.map((value, i) => value - b.values[i]) };
}

/** The field carried one pixel beyond the plate, so that an outline drawn over its rim leaves no gap. */
export function withRim({ columns, rows, values }: PlanRaster): PlanRaster {
  const out = values.slice();
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++) {
      const at = j * columns + i;
      if (!Number.isNaN(values[at])) continue;
      if (i > 0 && !Number.isNaN(values[at - 1])) out[at] = values[at - 1];
      else if (i < columns - 1 && !Number.isNaN(values[at + 1])) out[at] = values[at + 1];
      else if (j > 0 && !Number.isNaN(values[at - columns])) out[at] = values[at - columns];
      else if (j < rows - 1 && !Number.isNaN(values[at + columns])) out[at] = values[at + columns];
    }
  return { columns, rows, values: out };
}
