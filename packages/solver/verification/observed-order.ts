/** Differences below this share of the value are rounding and the luck of the mesh. */
const NOISE = 1e-5;

/**
 * Order of convergence from values on three meshes, each with half the element size of the one before (Richardson):
 * `log2 |(v1 - v2) / (v2 - v3)|`. `null` where the values do not settle: differences that are noise, change sign or grow.
 */
export function observedOrder(values: readonly number[]): number | null {
  if (values.length !== 3) return null;
  const [coarse, middle, fine] = values;
  const [first, second] = [coarse - middle, middle - fine];
  const noise = NOISE * Math.max(...values.map(Math.abs));
  if (Math.abs(first) <= noise || Math.abs(second) <= noise || first / second <= 1) return null;
  return Math.log2(first / second);
}
