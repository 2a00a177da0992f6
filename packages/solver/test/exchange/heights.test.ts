import { describe, expect, it } from 'vitest';
import { readHeightMap, takeHeights } from '../../src/exchange/heights.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { solveHead } from '../../src/solve-head.ts';
import { faultOf } from '../model/fault-of.ts';
import { twoByTwo } from '../model/two-by-two.ts';

/** A map over the head, 5 mm apart, heights in um. */
function map(z: (x: number, y: number) => number): string {
  const rows = Array.from({ length: 11 * 11 }, (_, i) => [-25 + 5 * (i % 11), -25 + 5 * Math.floor(i / 11)]);
  return [
    'x (mm);y (mm);z (um)',
    ...rows.map(([x, y]) => `${x};${y};${(1000 * z(x, y)).toFixed(6)}`.replaceAll('.', ',')),
  ].join('\n');
}

const taken = (text: string) => checkHeadModel(takeHeights(twoByTwo, readHeightMap(text).read).model);

describe('a board height map', () => {
  it('gives fasteners their heights, linear between the points: a plane exactly', () => {
    const plane = (x: number, y: number) => 0.02 + 4e-4 * x - 7e-4 * y;
    const { fasteners } = taken(map(plane));
    for (const { at, height } of fasteners) expect(height).toBeCloseTo(plane(...at), 8);
  });

  it('bends nothing and leaves the bow alone when it is a plane', () => {
    const level = solveHead(twoByTwo).result;
    const tilted = solveHead(taken(map((x, y) => 0.02 + 4e-4 * x - 7e-4 * y))).result;
    expect(tilted.cases[0].bow.value).toBeCloseTo(level.cases[0].bow.value, 8);
    tilted.cases[0].fasteners.forEach(({ reaction }, i) => {
      expect(reaction).toBeCloseTo(level.cases[0].fasteners[i].reaction, 3);
    });
  });

  it('twists the head when it is a saddle, with reactions that balance', () => {
    const saddle = solveHead(taken(map((x, y) => (3e-5 * x * y) / 2))).result;
    const level = solveHead(twoByTwo).result;
    const change = saddle.cases[0].fasteners.map(({ reaction }, i) => reaction - level.cases[0].fasteners[i].reaction);
    // Corners where x y > 0 are raised and press harder.
    expect(Math.sign(change[1])).toBe(1);
    expect(change[1] / change[2]).toBeCloseTo(1, 3);
    expect(change[0] / change[1]).toBeCloseTo(-1, 3);
  });

  it('goes on as at its edge just outside, and says so; further out it is refused', () => {
    const inner = (reach: number) =>
      [
        'x,y,z',
        ...[-1, 0, 1].flatMap((i) => [-1, 0, 1].map((j) => `${reach * i},${reach * j},${0.01 * (1 + i)}`)),
      ].join('\n');
    const { model, notes } = takeHeights(twoByTwo, readHeightMap(inner(19)).read);
    expect(notes.join()).toMatch(/Fastener F1 lies 2 mm outside the map/);
    expect(model.fasteners[1].height).toBeCloseTo(0.02, 9);
    expect(faultOf(() => takeHeights(twoByTwo, readHeightMap(inner(5)).read))).toMatchObject({
      code: 'OUTSIDE',
      path: 'fasteners.0',
    });
  });

  it.each([
    ['of two points', 'x,y,z\n0,0,0\n1,1,0', /holds 2 points/],
    ['of heights in another unit', 'x,y,z\n0,0,0\n50,0,25\n0,50,10', /unit is probably um/],
    ['without heights', 'x,y\n0,0\n1,0\n1,1', /no column for z/],
  ])('is refused when %s', (_, text, message) => {
    expect(faultOf(() => readHeightMap(text))).toMatchObject({
      code: 'UNREADABLE',
      message: expect.stringMatching(message),
    });
  });

  it('is refused as a surface when all points lie on one line', () => {
    const read = readHeightMap('x,y,z\n0,0,0\n1,1,0\n2,2,0').read;
    expect(faultOf(() => takeHeights(twoByTwo, read)).message).toMatch(/on one line/);
  });

  it('leaves out a point measured twice and one without a height', () => {
    const { preview } = readHeightMap('x,y,z\n0,0,0\n1,0,0\n0,0,0.1\n0,1,\n1,1,0');
    expect(preview.dropped.map(({ line }) => line)).toEqual([4, 5]);
  });
});
