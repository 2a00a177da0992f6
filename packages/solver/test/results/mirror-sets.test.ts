import { describe, expect, it } from 'vitest';
import { mirrorSets } from '../../src/results/mirror-sets.ts';
import { twoByTwo } from '../model/two-by-two.ts';

const setsOf = (places: readonly (readonly [number, number])[], middle: [number, number] = [0, 0]) =>
  mirrorSets({ ...twoByTwo, fasteners: places.map(([x, y], i) => ({ name: `F${i + 1}`, at: [x, y] })) }, middle);
const indices = (sets: ReturnType<typeof setsOf>) => sets.map((set) => set.map(({ index }) => index));
const rectangle: [number, number][] = [
  [-20, 10],
  [20, 10],
  [-20, -10],
  [20, -10],
];

describe('fasteners in mirror image', () => {
  it('are one set of four at the corners of a rectangle, each with the signs of its step', () => {
    const [set, ...others] = setsOf(rectangle);
    expect(others).toEqual([]);
    expect(set.map(({ sign }) => sign)).toEqual([
      [1, 1],
      [-1, 1],
      [1, -1],
      [-1, -1],
    ]);
    expect(set.every(({ onLine }) => !onLine[0] && !onLine[1])).toBe(true);
  });

  it('are sets of their own at other distances, and lie on a line within half a millimetre of it', () => {
    const sets = setsOf([...rectangle, [0.4, 10], [0, -10], [-20, 0]]);
    expect(indices(sets)).toEqual([[0, 1, 2, 3], [4, 5], [6]]);
    expect(sets[1].map(({ onLine }) => onLine)).toEqual([
      [true, false],
      [true, false],
    ]);
    expect(sets[2][0].onLine).toEqual([false, true]);
  });

  it('belong together within half a millimetre, and not a millimetre off', () => {
    expect(indices(setsOf([...rectangle.slice(0, 3), [20.3, -10.3]]))).toEqual([[0, 1, 2, 3]]);
    expect(indices(setsOf([...rectangle.slice(0, 3), [20.9, -10.9]]))).toEqual([[0, 1, 2], [3]]);
  });

  it('mirror about the sites, else about their own middle, else about the origin, where most have a partner', () => {
    const moved = rectangle.map(([x, y]): [number, number] => [x + 7, y - 3]);
    expect(indices(setsOf(moved, [7, -3]))).toEqual([[0, 1, 2, 3]]);
    expect(indices(setsOf(moved, [0, 0]))).toEqual([[0, 1, 2, 3]]);
    // One far to the right: neither the sites' middle nor its own is the line that the others mirror across.
    expect(indices(setsOf([...rectangle, [50, 3]], [5, 5]))).toEqual([[0, 1, 2, 3], [4]]);
  });
});
