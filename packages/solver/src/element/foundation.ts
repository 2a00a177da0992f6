import { deflectionShape } from './deflection.ts';

/**
 * Six-point rule over a triangle, exact to degree 4 (Cowper 1973): each point has two equal coordinates `twice`, and
 * weights are of unit area.
 */
const [ROOT10, ROOT_A, ROOT_B] = [
  Math.sqrt(10),
  Math.sqrt(38 - 44 * Math.sqrt(0.4)),
  Math.sqrt(213125 - 53320 * Math.sqrt(10)),
];
const RULE = [
  { weight: (620 + ROOT_B) / 3720, twice: (8 - ROOT10 + ROOT_A) / 18 },
  { weight: (620 - ROOT_B) / 3720, twice: (8 - ROOT10 - ROOT_A) / 18 },
] as const;

/** Scratch of one call. */
const N = new Float64Array(9);

/**
 * Adds the stiffness of an elastic foundation under a polygon inside a plate triangle, `Ke += k integral of N' N dA`
 * with the deflection N of deflection.ts: exact, on a signed fan of the polygon.
 *
 * @param x node coordinates counter-clockwise, mm, `[3]`
 * @param y likewise
 * @param modulus k, N/mm3
 * @param polygon `[2 * count]` x, y of each corner, counter-clockwise; the triangle itself for the whole element
 * @param Ke `[9 * 9]` row-major, added to
 */
export function addFoundationStiffness(
  x: Float64Array,
  y: Float64Array,
  modulus: number,
  polygon: Float64Array,
  count: number,
  Ke: Float64Array,
): void {
  const [x0, y0] = [x[0], y[0]];
  const [ux, uy, vx, vy] = [x[1] - x0, y[1] - y0, x[2] - x0, y[2] - y0];
  const twiceArea = ux * vy - vx * uy;
  const [ax, ay] = [polygon[0], polygon[1]];
  for (let c = 2; c < count; c++) {
    const [bx, by, cx, cy] = [polygon[2 * c - 2], polygon[2 * c - 1], polygon[2 * c], polygon[2 * c + 1]];
    const area = ((bx - ax) * (cy - ay) - (cx - ax) * (by - ay)) / 2;
    for (const { weight, twice } of RULE) {
      const once = 1 - 2 * twice;
      for (let corner = 0; corner < 3; corner++) {
        const wa = corner === 0 ? once : twice;
        const wb = corner === 1 ? once : twice;
        const wc = corner === 2 ? once : twice;
        const px = wa * ax + wb * bx + wc * cx - x0;
        const py = wa * ay + wb * by + wc * cy - y0;
        const l1 = (px * vy - vx * py) / twiceArea;
        const l2 = (ux * py - px * uy) / twiceArea;
        deflectionShape(x, y, 1 - l1 - l2, l1, l2, N);
        const factor = modulus * area * weight;
        for (let p = 0; p < 9; p++) for (let q = 0; q < 9; q++) Ke[9 * p + q] += factor * N[p] * N[q];
      }
    }
  }
}
