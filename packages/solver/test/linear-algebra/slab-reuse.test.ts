import { describe, expect, it } from 'vitest';
import { SIMD } from '../../src/linear-algebra/kernel-binary.ts';
import { slabPool } from '../../src/linear-algebra/slab-pool.ts';

const PAGE = 65536;
const compiled = new WebAssembly.Module(Uint8Array.from(atob(SIMD), (character) => character.charCodeAt(0)));
const pagesOf = ({ memory }: { readonly memory: WebAssembly.Memory }) => memory.buffer.byteLength / PAGE;

/** A pool with memories of so many pages to spare. */
function poolOf(...pages: number[]) {
  const pool = slabPool(compiled, false);
  const slabs = pages.map((count) => pool.take(count * PAGE));
  for (const slab of slabs) pool.giveBack(slab);
  return { pool, slabs };
}

describe('memories that are used again', () => {
  it('are as large as asked for, to whole pages', () => {
    const pool = slabPool(compiled, false);
    for (const [size, pages] of [
      [1, 1],
      [PAGE, 1],
      [PAGE + 1, 2],
      [7 * PAGE, 7],
    ])
      expect(pagesOf(pool.take(size))).toBe(pages);
  });

  it('are the smallest that is large enough, whatever the order they came back in', () => {
    const { pool, slabs } = poolOf(9, 3, 6);
    expect(pool.take(4 * PAGE)).toBe(slabs[2]);
    expect(pool.take(3 * PAGE)).toBe(slabs[1]);
    expect(pool.take(1)).toBe(slabs[0]);
    // Nothing is lent twice.
    expect(slabs).not.toContain(pool.take(1));
  });

  it('are the largest, grown, where none is large enough', () => {
    const { pool, slabs } = poolOf(2, 5, 3);
    expect(pool.take(8 * PAGE)).toBe(slabs[1]);
    expect(pagesOf(slabs[1])).toBe(8);
    expect(pagesOf(slabs[2])).toBe(3);
  });

  it('are three at most, the largest', () => {
    const { pool, slabs } = poolOf(4, 1, 3, 2);
    const again = [pool.take(1), pool.take(1), pool.take(1), pool.take(1)];
    expect(again.slice(0, 3)).toEqual([slabs[3], slabs[2], slabs[0]]);
    expect(slabs).not.toContain(again[3]);
  });

  it('are spare once, however often they are given back', () => {
    const { pool, slabs } = poolOf(2);
    pool.giveBack(slabs[0]);
    expect(pool.take(1)).toBe(slabs[0]);
    expect(pool.take(1)).not.toBe(slabs[0]);
  });
});
