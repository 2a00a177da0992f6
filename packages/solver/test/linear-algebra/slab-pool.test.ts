import { expect, it } from 'vitest';
import { SIMD } from '../../src/linear-algebra/kernel-binary.ts';
import { slabPool } from '../../src/linear-algebra/slab-pool.ts';

it('says how much memory a factor takes where so much cannot be had, and goes on with less', () => {
  const binary = Uint8Array.from(atob(SIMD), (character) => character.charCodeAt(0));
  const pool = slabPool(new WebAssembly.Module(binary), false);
  for (const size of [2 ** 33, 2 ** 40])
    expect(() => pool.take(size)).toThrowError(
      expect.objectContaining({
        code: 'TOO_LARGE',
        message: expect.stringMatching(/takes \d+\.0 GiB .* Use larger elements\.$/),
      }),
    );
  const slab = pool.take(2 ** 20);
  expect(slab.memory.buffer.byteLength).toBeGreaterThanOrEqual(2 ** 20);
  // A memory in use that cannot grow any more.
  pool.giveBack(slab);
  expect(() => pool.take(2 ** 33)).toThrowError(expect.objectContaining({ code: 'TOO_LARGE' }));
});
