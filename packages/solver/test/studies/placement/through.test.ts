import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/point.ts';
import type { HeadModel } from '../../../src/model/head-model.ts';
import { headField } from '../../../src/studies/placement/head-field.ts';
import { placementSteps } from '../../../src/studies/placement/placement-steps.ts';
import type { PlacementPlan } from '../../../src/studies/placement/plan.ts';
import type { PlacementSummary } from '../../../src/studies/placement/rows.ts';
import { bare, framed } from './heads.ts';

/** Radius of an M2 screw head: ISO 4762, 3.8 mm. */
const REACH = 1.9;

function placed(model: HeadModel, plan: PlacementPlan): PlacementSummary {
  const steps = placementSteps(model, { starts: 2, seed: 3, ...plan });
  for (;;) {
    const next = steps.next();
    if (next.done) return next.value;
  }
}

/** Distance to the edges of a rectangle about the origin, negative outside; from the drawings of the heads. */
const inside = ([x, y]: readonly number[], [w, h]: number[]) =>
  Math.abs(x) <= w / 2 && Math.abs(y) <= h / 2
    ? Math.min(w / 2 - Math.abs(x), h / 2 - Math.abs(y))
    : -Math.hypot(Math.max(0, Math.abs(x) - w / 2), Math.max(0, Math.abs(y) - h / 2));
const [BODY, OUTER, WINDOW] = [
  [46, 30],
  [64, 48],
  [34, 20],
];

describe('the part that screws go through', () => {
  it.each([0, 1.5])('is the frame alone where there is one, %f mm from its edge', (edge) => {
    const { best, remarks } = placed(framed, { count: 5, edge });
    for (const { at } of best.placement) {
      expect(inside(at, BODY)).toBeLessThanOrEqual(-REACH + 1e-6);
      expect(inside(at, OUTER)).toBeGreaterThanOrEqual(REACH + edge - 1e-6);
    }
    expect(remarks).toContainEqual(expect.stringMatching(/^Screws go through the frame alone/));
  });

  it('is the body where that is asked for, on the frame or in its window, so far from the edge of the body', () => {
    const { best, remarks } = placed(framed, { count: 4, through: 'body', edge: 1 });
    for (const { at } of best.placement) {
      expect(inside(at, BODY)).toBeGreaterThanOrEqual(REACH + 1 - 1e-6);
      expect(Math.abs(inside(at, WINDOW))).toBeGreaterThanOrEqual(REACH - 1e-6);
    }
    const least = Math.min(...best.placement.map(({ at }) => inside(at, BODY))) - REACH;
    expect(remarks).toContainEqual(
      `NW, NE, S and F4 go through the body, with ${least.toFixed(2)} mm from screw head to the edge of the body at least.`,
    );
  });

  it.each(['frame', 'body', 'either'] as const)('has room where the drawing says: %s', (through) => {
    const edge = 2;
    const { room } = headField({ ...framed, keepOuts: [] }, { through, edge });
    const flat = (at: Point) => [BODY, OUTER, WINDOW].every((size) => Math.abs(inside(at, size)) >= REACH);
    const [frame, body] = [
      (at: Point) => inside(at, BODY) < 0 && inside(at, OUTER) >= REACH + edge,
      (at: Point) => inside(at, BODY) >= REACH + edge,
    ];
    const isOn = { frame, body, either: (at: Point) => frame(at) || body(at) }[through];
    let open = 0;
    for (let x = -33.03; x < 34; x += 0.7)
      for (let y = -25.03; y < 26; y += 0.7) {
        expect(room.allows([x, y]), `${x}, ${y}`).toBe(flat([x, y]) && isOn([x, y]));
        if (room.allows([x, y])) open++;
      }
    expect(open).toBeGreaterThan(200);
  });

  it('is either where the frame has no room, and says so; the frame alone is then refused', () => {
    const narrow: HeadModel = { ...framed, frame: { ...framed.frame!, outer: { rectangle: [49, 33] } } };
    const fasteners = framed.fasteners.map((one) => ({ ...one, at: one.at.map((c) => 0.7 * c) as [number, number] }));
    const { best, remarks } = placed({ ...narrow, fasteners }, {});
    expect(best.placement.every(({ at }) => inside(at, BODY) > 0)).toBe(true);
    expect(remarks).toContain('The frame alone has no room for all of them, so they may go through the body too.');
    expect(() => placed({ ...narrow, fasteners }, { through: 'frame' })).toThrow(/is open to a fastener/);
  });

  /** The frame is open in two strips alone, 60 mm apart and 32 mm long: each holds two screws 18 mm apart, not three. */
  const strips: HeadModel = { ...framed, frame: { ...framed.frame!, outer: { rectangle: [64, 36] } }, keepOuts: [] };
  const wide: HeadModel = {
    ...strips,
    fasteners: framed.fasteners.map(({ at: [x, y], ...one }) => ({ ...one, at: [x, 0.8 * y] })),
  };
  it.each([undefined, 300_000])('is either where the frame has positions but not at the spacing, most %s', (most) => {
    const plan = { count: 6, spacing: 18, step: 3, ...(most === undefined ? { most: 1 } : { most }) };
    const { best, remarks } = placed(wide, { ...plan, mirror: 'both' });
    expect(best.placement).toHaveLength(6);
    const points = best.placement.map(({ at }) => at);
    for (const [i, [x, y]] of points.entries())
      for (const [px, py] of points.slice(i + 1)) expect(Math.hypot(x - px, y - py)).toBeGreaterThanOrEqual(18 - 1e-6);
    expect(points.some((at) => inside(at, BODY) > 0)).toBe(true);
    expect(remarks).toContain(
      'The frame alone has no room for all of them at least 18 mm apart, so they may go through the body too.',
    );
    expect(() => placed(wide, { ...plan, mirror: 'both', through: 'frame' })).toThrow(/"through": "either"/);
    // Four fit.
    expect(placed(wide, { ...plan, count: 4, mirror: 'both' }).remarks).toContainEqual(
      expect.stringMatching(/^Screws go through the frame alone/),
    );
  });

  it('is not spoken of on a head without a frame', () => {
    const { remarks } = placed(bare, { mirror: 'both', step: 4 });
    expect(remarks.filter((remark) => remark.includes('frame'))).toEqual([]);
  });
});
