import { Fault } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { doubledMisses, mirroredMisses, stiffened, withOneMoreSupport } from './relations.ts';

const SEEDS = 24;

/** A relation at every seed whose plate is not refused. */
function over<T>(relation: (seed: number) => T, holds: (value: T, seed: number) => void): void {
  let used = 0;
  for (let seed = 0; seed < SEEDS; seed++) {
    let value: T;
    try {
      value = relation(seed);
    } catch (thrown) {
      if (thrown instanceof Fault && thrown.code !== 'INTERNAL') continue;
      throw thrown;
    }
    holds(value, seed);
    used++;
  }
  expect(used).toBeGreaterThan(SEEDS / 2);
}

describe('any plate', () => {
  it('answers twice its load with twice its deflections and reactions, one-way supports included', () => {
    over(doubledMisses, (miss, seed) => expect(miss, `seed ${seed}`).toBeLessThan(1e-9));
  });

  it('stores no more energy with one more rigid support', () => {
    over(withOneMoreSupport, ([before, after], seed) => expect(after / before, `seed ${seed}`).toBeLessThan(1 + 1e-9));
  });

  it('stores less energy of a stiffer material', () => {
    over(stiffened, ([before, after], seed) => {
      expect(after / before, `seed ${seed}`).toBeLessThan(1);
      // Nothing gains more than the material does.
      expect(after / before, `seed ${seed}`).toBeGreaterThan(1 / 1.7 - 1e-9);
    });
  });

  it('is the mirror image of its mirror image, to the errors of both meshes', () => {
    over(mirroredMisses, ({ miss, error }, seed) => expect(miss, `seed ${seed}`).toBeLessThan(0.02 + 3 * error));
  });
});
