import { mersenne } from 'pure-rand/generator/mersenne';
import { Fault } from '../../fault/fault.ts';
import { MOST_DIMENSIONS } from './direction-numbers.ts';
import { scrambled } from './scramble.ts';
import { directionsOf, sobolPoint } from './sobol-sequence.ts';

const RANGE = 4294967296;

/** Makes point `index`: `[dimensions]` numbers in the open interval from 0 to 1. */
export type UnitSamples = (index: number) => Float64Array;

/**
 * Points that fill the unit cube, any of them at any time: random ones, or those of a Sobol sequence, scrambled at random,
 * which leaves their evenness and makes them differ from seed to seed.
 *
 * @param count points at most, for random ones
 * @throws Fault TOO_LARGE for more dimensions than there are direction numbers for
 */
export function unitSamples(
  sampling: 'random' | 'sobol',
  seed: number,
  dimensions: number,
  count: number,
): UnitSamples {
  // Its seeding spreads small seeds over the whole state; the first numbers of shift registers would be near 0 or 1.
  const generator = mersenne(seed);
  const next = (): number => generator.next() >>> 0;
  const middle = (x: number): number => (x + 0.5) / RANGE;
  if (sampling === 'random') {
    const all = Float64Array.from({ length: count * dimensions }, () => middle(next()));
    return (index) => all.slice(index * dimensions, (index + 1) * dimensions);
  }
  if (dimensions > MOST_DIMENSIONS)
    throw new Fault(
      'TOO_LARGE',
      `The study takes ${dimensions} independent numbers a head; a Sobol sequence has ${MOST_DIMENSIONS}. Vary less, or set "sampling": "random".`,
      'sampling',
      { value: dimensions, expected: `at most ${MOST_DIMENSIONS}` },
    );
  const directions = directionsOf(dimensions);
  const seeds = Uint32Array.from({ length: dimensions }, next);
  return (index) =>
    Float64Array.from(sobolPoint(directions, index), (x, dimension) => middle(scrambled(x, seeds[dimension])));
}
