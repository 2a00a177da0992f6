import { describe, expect, it } from 'vitest';
import { pointLayout, type TextBox } from '../../src/charts/point-layout.ts';

const size = { width: 720, height: 260 };
const overlap = (a: TextBox, b: TextBox): boolean =>
  Math.abs(a.x - b.x) < (a.width + b.width) / 2 && Math.abs(a.y - b.y) < (a.height + b.height) / 2;

describe('a chart of points', () => {
  it('has the limit where neither a point nor the curve is', () => {
    // The last point lies on the limit, at the right-hand end where its label would stand.
    const points = [9, 6, 4.2, 3.5].map((y, x) => ({ x, y: 10 * y }));
    const { limit, x, y } = pointLayout(points, 35, { ...size, joined: true });
    for (const point of points)
      expect(overlap(limit.place, { x: x(point.x), y: y(point.y), width: 10, height: 10 })).toBe(false);
  });

  it('keeps every label within the field, off the axis, the points and one another', () => {
    const points = [
      { x: 139, y: 30, label: 'skip 1, 1' },
      // Near the axis, with another right above it: only beside it is room.
      { x: 141, y: 0.4, label: 'skip 2, 1' },
      { x: 141, y: 3.4 },
      { x: 148, y: 31, label: 'skip 3, 1' },
      // Its label would stand on that of the limit.
      { x: 148, y: 33.8, label: 'skip 4, 1' },
    ];
    const { labels, limit, floor, left, x, y } = pointLayout(points, 35, { ...size, joined: false });
    const shown = labels.filter((label) => label !== null);
    expect(shown.length).toBeGreaterThanOrEqual(3);
    const dots = points.map((point) => ({ x: x(point.x), y: y(point.y), width: 10, height: 10 }));
    for (const [i, label] of shown.entries()) {
      expect(label.y + label.height / 2).toBeLessThanOrEqual(floor);
      expect(label.x - label.width / 2).toBeGreaterThanOrEqual(left);
      expect(label.x + label.width / 2).toBeLessThanOrEqual(size.width);
      for (const other of [...dots, limit.place, ...shown.slice(0, i)]) expect(overlap(label, other)).toBe(false);
    }
  });

  it('has its ticks at the values that were asked for, fewer where they would touch', () => {
    const values = Array.from({ length: 9 }, (_, i) => 3.15 + 0.45 * i);
    const ticksAt = (width: number) => {
      const points = values.map((x) => ({ x, y: 40 }));
      return pointLayout(points, 35, { width, height: 260, joined: true, wanted: values }).ticks;
    };
    expect(ticksAt(720)).toEqual(values);
    const few = ticksAt(320);
    expect(few.length).toBeGreaterThan(2);
    expect(few.length).toBeLessThan(9);
    expect(values).toEqual(expect.arrayContaining([...few]));
  });

  it('shows the value of the head as it is where the points do not reach it', () => {
    const { x, left, right } = pointLayout(
      [
        { x: 6, y: 30 },
        { x: 8, y: 20 },
      ],
      35,
      {
        ...{ ...size, joined: true },
        others: [4.5],
      },
    );
    expect(x(4.5)).toBeGreaterThan(left);
    expect(x(8)).toBeLessThan(right);
  });
});
