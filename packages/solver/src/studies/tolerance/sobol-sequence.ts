import { directionRows } from './direction-numbers.ts';

const BITS = 32;

/**
 * Point `index` of the Sobol sequence in Gray-code order (Antonov and Saleev 1979), which begins with the origin: in each
 * dimension the XOR of the direction numbers at the bits of `index ^ (index >> 1)`.
 *
 * @param directions from {@link directionsOf}, one for each dimension
 * @returns for each dimension a whole number below 2^32; over 2^32 it is the coordinate
 */
export function sobolPoint(directions: readonly Uint32Array[], index: number): Uint32Array {
  const gray = (index ^ (index >>> 1)) >>> 0;
  return Uint32Array.from(directions, (direction) => {
    let x = 0;
    for (let bit = 0; bit < BITS; bit++) if ((gray >>> bit) & 1) x ^= direction[bit];
    return x;
  });
}

/** Direction numbers `v_k 2^32`, k from 1, of the first so many dimensions; the first is van der Corput's. */
export function directionsOf(dimensions: number): Uint32Array[] {
  return Array.from({ length: dimensions }, (_, dimension) =>
    dimension === 0
      ? Uint32Array.from({ length: BITS }, (_, k) => 1 << (BITS - 1 - k))
      : byRecurrence(directionRows[dimension - 1]),
  );
}

/** `m_k = 2 a_1 m_(k-1) ^ 4 a_2 m_(k-2) ^ ... ^ 2^s m_(k-s) ^ m_(k-s)`, with `v_k = m_k / 2^k` (Joe and Kuo 2008, eq. 2). */
function byRecurrence({ degree, inner, start }: (typeof directionRows)[number]): Uint32Array {
  const v = new Uint32Array(BITS);
  for (let k = 0; k < BITS; k++) {
    if (k < degree) v[k] = start[k] << (BITS - 1 - k);
    else {
      v[k] = v[k - degree] ^ (v[k - degree] >>> degree);
      for (let i = 1; i < degree; i++) if ((inner >>> (degree - 1 - i)) & 1) v[k] ^= v[k - i];
    }
  }
  return v;
}
