import type { Point } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { linkedPlaces, mirrorAxesOf, mirrorLink, symmetricAxes, unlinked } from '../../src/state/mirror.ts';
import { sampleHead } from './sample-head.ts';

const places = sampleHead.fasteners.map(({ at }): Point => [at[0], at[1]]);
const moved = (index: number, to: Point, from: readonly Point[] = places, centre: Point = [0, 0]) =>
  Object.fromEntries(linkedPlaces(mirrorLink(from, index, centre), to).map(([i, place]) => [i, place]));

describe('mirrorLink', () => {
  it('moves the three opposite a corner fastener', () => {
    expect(moved(1, [20, 12])).toEqual({ 1: [20, 12], 0: [-20, 12], 3: [20, -12], 2: [-20, -12] });
  });

  it('keeps a fastener on its symmetry line until it is pulled well off it', () => {
    expect(moved(5, [22, 1.2])).toEqual({ 5: [22, 0], 4: [-22, 0] });
    expect(moved(5, [22, 3])).toEqual({ 5: [22, 3], 4: [-22, 3] });
  });

  it('takes partners within 0.5 mm and sets them exactly opposite', () => {
    const near = places.map((place, i): Point => (i === 0 ? [-25.3, 15.3] : place));
    const far = places.map((place, i): Point => (i === 0 ? [-25.6, 15.3] : place));
    expect(moved(1, [20, 12], near)[0]).toEqual([-20, 12]);
    expect(moved(1, [20, 12], far)[0]).toBeUndefined();
  });

  it('mirrors about the centre of the site pattern', () => {
    const shifted = places.map(([x, y]): Point => [x + 5, y - 2]);
    expect(moved(1, [24, 11], shifted, [5, -2])[2]).toEqual([-14, -15]);
  });

  it('moves one alone when not linked', () => {
    expect(linkedPlaces(unlinked(3), [1.5, 0.2])).toEqual([[3, [1.5, 0.2]]]);
  });
});

describe('lines of a pattern', () => {
  it('are those across which it is its own image', () => {
    expect(symmetricAxes(places, [0, 0])).toBe('both');
    expect(
      symmetricAxes(
        places.map(([x, y]): Point => [x + 5, y - 2]),
        [5, -2],
      ),
    ).toBe('both');
    expect(
      symmetricAxes(
        places.map(([x, y]): Point => [x + 1, y]),
        [0, 0],
      ),
    ).toBe('y');
    expect(
      symmetricAxes(
        places.map(([x, y]): Point => [x, y + 1]),
        [0, 0],
      ),
    ).toBe('x');
    // One corner out of place leaves no line at all.
    expect(
      symmetricAxes(
        places.map((place, i): Point => (i === 0 ? [-20, 11] : place)),
        [0, 0],
      ),
    ).toBeNull();
  });

  it('are mirrored across unless something else is chosen', () => {
    expect(mirrorAxesOf(null, sampleHead)).toBe('both');
    expect(mirrorAxesOf('off', sampleHead)).toBeNull();
    const odd = { ...sampleHead, fasteners: sampleHead.fasteners.slice(1) };
    expect(mirrorAxesOf(null, odd)).toBeNull();
    expect(mirrorAxesOf('x', odd)).toBe('x');
  });
});
