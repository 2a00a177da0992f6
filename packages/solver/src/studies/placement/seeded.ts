/**
 * Numbers from 0 up to 1 that follow from a seed alone: a counter through the 32-bit mix of SplitMix (Steele, Lea and
 * Flood 2014; constants from memory). Enough to spread starts, not for statistics.
 */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let z = state;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return ((z ^ (z >>> 16)) >>> 0) / 2 ** 32;
  };
}
