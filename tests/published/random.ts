import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Uniform numbers between two bounds, the same for the same seed. */
export function uniform(seed: number): (low: number, high: number) => number {
  const generator = xoroshiro128plus(seed);
  return (low, high) => low + ((high - low) * (generator.next() >>> 0)) / 2 ** 32;
}
