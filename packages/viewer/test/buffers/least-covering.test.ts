import { describe, expect, it } from 'vitest';
import { leastCovering, overlapOf } from '../../src/buffers/least-covering.ts';

const gaps = { beside: 20, edge: 8 };
const room = { width: 600, height: 400 };
const own = { width: 120, height: 60 };

describe('place of a box beside a point', () => {
  it('is to the right where nothing is in the way, and on the stage', () => {
    expect(leastCovering([200, 200], own, room, [], gaps)).toEqual([220, 170]);
    // No room to the right of a point at the edge: to the left, since it must not lie on the point.
    expect(leastCovering([590, 200], own, room, [], gaps)).toEqual([450, 170]);
    expect(leastCovering([300, 2], own, room, [], gaps)[1]).toBeGreaterThanOrEqual(8);
  });

  it('leaves the texts that are there in sight while any side is free', () => {
    const tag = { left: 170, top: 160, width: 60, height: 18 };
    const beside = { left: 225, top: 190, width: 80, height: 18 };
    const before = { left: 100, top: 190, width: 80, height: 18 };
    const [left, top] = leastCovering([200, 200], own, room, [tag, beside, before], gaps);
    for (const other of [tag, beside, before]) {
      const apart =
        left >= other.left + other.width ||
        left + own.width <= other.left ||
        top >= other.top + other.height ||
        top + own.height <= other.top;
      expect(apart).toBe(true);
    }
  });

  it('goes further away where all that is near would cover a text', () => {
    const texts = [
      [225, 190],
      [95, 190],
      [160, 240],
      [160, 130],
    ].map(([left, top]) => ({ left, top, width: 80, height: 18 }));
    const [left, top] = leastCovering([200, 200], own, room, texts, gaps);
    expect(texts.every((text) => overlapOf(text, { left, top, ...own }) === 0)).toBe(true);
    expect(Math.hypot(left + own.width / 2 - 200, top + own.height / 2 - 200)).toBeLessThan(200);
  });

  it('covers the least where all sides are taken', () => {
    const all = { left: 0, top: 0, width: 600, height: 400 };
    const twice = { left: 290, top: 0, width: 310, height: 400 };
    expect(leastCovering([300, 200], { width: 80, height: 40 }, room, [all, twice], gaps)[0]).toBeLessThan(280);
  });
});
