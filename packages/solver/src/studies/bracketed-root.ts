/** Steps after which even bisection would long be there. */
const MOST_STEPS = 100;

/**
 * Root of a function between two points where its signs differ: inverse quadratic interpolation and secants, guarded by
 * bisection (Brent 1973, Algorithms for Minimization without Derivatives, chapter 4).
 *
 * @param fa value at a
 * @param fb value at b, of the other sign or zero
 * @param tolerance half the length of the interval that is left about the root
 */
export function bracketedRoot(
  f: (x: number) => number,
  from: { readonly x: number; readonly f: number },
  to: { readonly x: number; readonly f: number },
  tolerance: number,
): number {
  let [a, fa, b, fb] = [from.x, from.f, to.x, to.f];
  // c is the end across the root from b; d the last step, e the one before.
  let [c, fc, d] = [a, fa, b - a];
  let e = d;
  for (let step = 0; step < MOST_STEPS; step++) {
    if (fb > 0 === fc > 0) {
      [c, fc] = [a, fa];
      d = b - a;
      e = d;
    }
    if (Math.abs(fc) < Math.abs(fb)) [a, fa, b, fb, c, fc] = [b, fb, c, fc, b, fb];
    const close = 2 * Number.EPSILON * Math.abs(b) + tolerance;
    const half = (c - b) / 2;
    if (Math.abs(half) <= close || fb === 0) return b;
    if (Math.abs(e) >= close && Math.abs(fa) > Math.abs(fb)) {
      const { p, q } = interpolation(a, fa, b, fb, c, fc, half);
      if (2 * p < Math.min(3 * half * q - Math.abs(close * q), Math.abs(e * q))) [e, d] = [d, p / q];
      else [e, d] = [half, half];
    } else [e, d] = [half, half];
    [a, fa] = [b, fb];
    b += Math.abs(d) > close ? d : half > 0 ? close : -close;
    fb = f(b);
  }
  return b;
}

/** Step p/q from b with p >= 0: by a secant through two points, by inverse quadratic interpolation through three. */
function interpolation(a: number, fa: number, b: number, fb: number, c: number, fc: number, half: number) {
  const s = fb / fa;
  let p = 2 * half * s;
  let q = 1 - s;
  if (a !== c) {
    const [r, t] = [fb / fc, fa / fc];
    p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
    q = (t - 1) * (r - 1) * (s - 1);
  }
  return p > 0 ? { p, q: -q } : { p: -p, q };
}
