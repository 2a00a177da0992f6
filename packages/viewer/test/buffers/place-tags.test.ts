import { describe, expect, it } from 'vitest';
import type { Box } from '../../src/buffers/least-covering.ts';
import { type PlacedTag, placeTags, type Tag } from '../../src/buffers/place-tags.ts';

const room = { width: 900, height: 400 };
const free = { never: [], taken: [], room, centre: [450, 200] as const };
const tag = (x: number, y: number, more: Partial<Tag> = {}): Tag => ({
  x,
  y,
  width: 70,
  height: 16,
  radius: 8,
  weight: 1,
  kept: false,
  place: -1,
  ...more,
});
const boxOf = ({ x, y, width, height }: Tag, { dx, dy }: PlacedTag): Box => ({
  left: x + dx - width / 2,
  top: y + dy - height / 2,
  width,
  height,
});
const apart = (a: Box, b: Box): boolean =>
  a.left + a.width <= b.left || b.left + b.width <= a.left || a.top + a.height <= b.top || b.top + b.height <= a.top;
const head = ({ x, y, radius }: Tag): Box => ({
  left: x - radius,
  top: y - radius,
  width: 2 * radius,
  height: 2.5 * radius,
});

describe('texts beside their points', () => {
  it('stand above them where that is free, and touch', () => {
    const [placed] = placeTags([tag(450, 200)], free);
    expect(placed).toEqual({ place: 0, dx: 0, dy: -18, led: false });
  });

  it('cover neither each other, nor a screw, nor what is taken, where six screws stand close around the sites', () => {
    const tags = [-1, 0, 1].flatMap((column) =>
      [-1, 1].map((row) => tag(450 + 48 * column, 200 + 42 * row + 6 * column, { weight: 5 - column })),
    );
    const never = tags.map(head);
    const taken = [-2, -1, 0, 1, 2].map((k): Box => ({ left: 440 + 25 * k, top: 186, width: 20, height: 28 }));
    const placed = placeTags(tags, { ...free, never, taken });
    const boxes = tags.map((one, i) => boxOf(one, placed[i]));
    expect(placed.every(({ place }) => place >= 0)).toBe(true);
    expect(placed.some(({ led }) => led)).toBe(true);
    for (const [i, box] of boxes.entries())
      for (const other of [...never, ...taken, ...boxes.slice(i + 1)]) expect(apart(box, other)).toBe(true);
    // Pushed outwards: no text stands nearer to the middle than the screw it is of.
    for (const [i, { dx, dy, led }] of placed.entries())
      if (led) expect(dx * (tags[i].x - 450) + dy * (tags[i].y - 200)).toBeGreaterThan(0);
  });

  it('are left out where no place is free, the least weighty first, but for those that are kept', () => {
    const all: Box = { left: 0, top: 0, width: 900, height: 400 };
    const taken = { ...free, taken: [all] };
    expect(placeTags([tag(450, 200)], taken)[0].place).toBe(-1);
    expect(placeTags([tag(450, 200, { kept: true })], taken)[0].place).toBeGreaterThanOrEqual(0);
    // Room for one.
    const narrow = { ...free, room: { width: 90, height: 60 }, centre: [45, 30] as const };
    const placed = placeTags([tag(45, 40, { radius: 0 }), tag(45, 42, { radius: 0, weight: 2 })], narrow);
    expect(placed.map(({ place }) => place >= 0)).toEqual([false, true]);
  });

  it('of a fastener that is dragged cover no screw, not its own either, however large and near the edge', () => {
    const dragged = tag(700, 40, { width: 268, height: 96, kept: true, weight: 9 });
    const others = [tag(560, 60), tag(640, 120), tag(820, 150)];
    const never = [dragged, ...others].map(head);
    const [placed] = placeTags([dragged, ...others], { ...free, never });
    const box = boxOf(dragged, placed);
    for (const other of never) expect(apart(box, other)).toBe(true);
    expect(box.left).toBeGreaterThanOrEqual(0);
    expect(box.top).toBeGreaterThanOrEqual(0);
    expect(box.left + box.width).toBeLessThanOrEqual(room.width);
  });

  it('stay where they were while that is free and no nearer place is', () => {
    const above: Box = { left: 400, top: 150, width: 100, height: 40 };
    const [first] = placeTags([tag(450, 200)], { ...free, taken: [above] });
    expect(first.place).toBe(1);
    const right = placeTags([tag(450, 200, { place: 2 })], { ...free, taken: [above] });
    expect(right[0].place).toBe(2);
    // Far off before, it comes back to its point.
    expect(placeTags([tag(450, 200, { place: 20 })], free)[0].place).toBe(0);
  });
});
