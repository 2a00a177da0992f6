/** Lists shorter than this are spelled out. */
const SHORT = 64;

/**
 * Text that tells one value from another, as JSON does, but short: long lists of points under the keys `points` and
 * `positions` are replaced by a 64-bit digest of their numbers, which costs a tenth of spelling them out.
 */
export function keyOf(value: unknown): string {
  return JSON.stringify(value, (key, held: unknown) =>
    (key === 'points' || key === 'positions') && Array.isArray(held) && held.length >= SHORT ? digest(held) : held,
  );
}

/**
 * Two 32-bit multiplicative hashes (FNV-1a by words, Fowler, Noll and Vo; the second with another prime) over the bits
 * of each number, with the length of each entry between: one chance in 10^19 that two lists share it.
 */
function digest(entries: readonly (readonly number[])[]): string {
  const word = new Uint32Array(2);
  const number = new Float64Array(word.buffer);
  let [a, b] = [0x811c9dc5, 0x9747b28c];
  const add = (bits: number): void => {
    a = Math.imul(a ^ bits, 0x01000193);
    a ^= a >>> 15;
    b = Math.imul(b ^ bits, 0x85ebca6b);
    b ^= b >>> 13;
  };
  for (const entry of entries) {
    add(entry.length);
    for (const part of entry) {
      number[0] = part;
      add(word[0]);
      add(word[1]);
    }
  }
  return `${entries.length}:${(a >>> 0).toString(16)}:${(b >>> 0).toString(16)}`;
}
