import type { Factor } from './factor.ts';

/**
 * `y = L^-1 P b`.
 *
 * @param b `[3 * n]` in node order
 * @returns `[3 * n]` in elimination order
 */
export function forward({ symbolic, memory }: Factor, b: Float64Array): Float64Array {
  const { n, permutation } = symbolic;
  const { scratch: y } = memory;
  do permuteIn(permutation, b, memory.value, y);
  while (!memory.forward());
  return memory.value.slice(y, y + 3 * n);
}

/**
 * `x = P^T L^-T y`.
 *
 * @param y `[3 * n]` in elimination order
 * @returns `[3 * n]` in node order
 */
export function backward(factor: Factor, y: Float64Array): Float64Array {
  return backwardEach(factor, [y])[0];
}

/** The same for several vectors at once, which reads the factor once for all of them; the bits are those of each alone. */
export function backwardEach({ symbolic, memory }: Factor, ys: readonly Float64Array[]): Float64Array[] {
  const { n, permutation } = symbolic;
  const xs: Float64Array[] = [];
  for (let from = 0; from < ys.length; ) {
    const { scratch, vectors, apart } = memory;
    const some = ys.slice(from, from + vectors);
    some.forEach((y, v) => {
      memory.value.set(y, scratch + v * apart);
    });
    if (!memory.backward(some.length)) continue;
    for (let v = 0; v < some.length; v++) {
      const x = new Float64Array(3 * n);
      permuteOut(permutation, memory.value, scratch + v * apart, x);
      xs.push(x);
    }
    from += some.length;
  }
  return xs;
}

/** `x = K^-1 b`, both `[3 * n]` in node order. */
export function solve({ symbolic, memory }: Factor, b: Float64Array): Float64Array {
  const { permutation } = symbolic;
  const { scratch: y } = memory;
  do permuteIn(permutation, b, memory.value, y);
  while (!(memory.forward() && memory.backward(1)));
  const x = new Float64Array(b.length);
  permuteOut(permutation, memory.value, y, x);
  return x;
}

/** Puts b into elimination order, from `y` on. */
function permuteIn(permutation: Uint32Array, b: Float64Array, m: Float64Array, y: number): void {
  for (let k = 0; k < permutation.length; k++, y += 3) {
    const at = 3 * permutation[k];
    m[y] = b[at];
    m[y + 1] = b[at + 1];
    m[y + 2] = b[at + 2];
  }
}

/** Puts what lies from `y` on back into node order. */
function permuteOut(permutation: Uint32Array, m: Float64Array, y: number, x: Float64Array): void {
  for (let k = 0; k < permutation.length; k++, y += 3) {
    const at = 3 * permutation[k];
    x[at] = m[y];
    x[at + 1] = m[y + 1];
    x[at + 2] = m[y + 2];
  }
}
