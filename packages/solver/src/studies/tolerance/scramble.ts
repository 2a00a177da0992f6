/**
 * Nested scrambling of a coordinate (Owen 1995): each binary digit is flipped or not depending on the digits before it, so
 * that intervals of 2^-k are exchanged whole. By the hash of Laine and Karras 2011 in the form of Burley 2020 (J. Comput.
 * Graph. Tech. 9; from memory): with the digits reversed, adding and multiplying by even numbers carries only upwards.
 *
 * @param x coordinate over 2^-32
 */
export function scrambled(x: number, seed: number): number {
  let digits = (reversed(x) + seed) | 0;
  for (const factor of [0x6c50b47c, 0xb82f1e52, 0xc7afe638, 0x8d22f6e6]) digits ^= Math.imul(digits, factor);
  return reversed(digits);
}

/** The 32 bits in reverse order. */
function reversed(x: number): number {
  let bits = ((x >>> 1) & 0x55555555) | ((x & 0x55555555) << 1);
  bits = ((bits >>> 2) & 0x33333333) | ((bits & 0x33333333) << 2);
  bits = ((bits >>> 4) & 0x0f0f0f0f) | ((bits & 0x0f0f0f0f) << 4);
  bits = ((bits >>> 8) & 0x00ff00ff) | ((bits & 0x00ff00ff) << 8);
  return ((bits >>> 16) | (bits << 16)) >>> 0;
}
