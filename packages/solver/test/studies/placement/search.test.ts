import { describe, expect, it } from 'vitest';
import { Fault } from '../../../src/fault/fault.ts';
import type { HeadModel } from '../../../src/model/head-model.ts';
import { solveHead } from '../../../src/solve-head.ts';
import { applyPlacement, type Placement } from '../../../src/studies/placement/placement.ts';
import { placementSteps } from '../../../src/studies/placement/placement-steps.ts';
import { checkPlacementPlan, type PlacementPlan } from '../../../src/studies/placement/plan.ts';
import type { PlacementRow, PlacementSummary } from '../../../src/studies/placement/rows.ts';
import { bare, framed } from './heads.ts';

/** Radius of an M2 screw head: ISO 4762, 3.8 mm. */
const REACH = 1.9;

function study(model: HeadModel, plan: PlacementPlan): { rows: PlacementRow[]; summary: PlacementSummary } {
  const rows: PlacementRow[] = [];
  const steps = placementSteps(model, plan);
  for (;;) {
    const next = steps.next();
    if (next.done) return { rows, summary: next.value };
    rows.push(next.value);
  }
}

/** Distance from a point to a rectangle about a centre, and to its edges from inside. */
const outside = (x: number, y: number, [w, h]: number[], [cx, cy] = [0, 0]) =>
  Math.hypot(Math.max(0, Math.abs(x - cx) - w / 2), Math.max(0, Math.abs(y - cy) - h / 2));
const inside = (x: number, y: number, [w, h]: number[]) => Math.min(w / 2 - Math.abs(x), h / 2 - Math.abs(y));

/** Where a screw head has room on the bare body, from its drawing. */
const openOnBare = (x: number, y: number): boolean =>
  inside(x, y, [44, 36]) >= REACH && outside(x, y, [9, 7]) >= REACH && outside(x, y, [12, 6], [0, 13]) >= REACH + 0.5;

/** The same on the framed body: clear of the edges of body and window too. */
const openOnFramed = (x: number, y: number): boolean =>
  inside(x, y, [64, 48]) >= REACH &&
  Math.abs(inside(x, y, [46, 30])) >= REACH &&
  (inside(x, y, [46, 30]) > 0 || outside(x, y, [46, 30]) >= REACH) &&
  (inside(x, y, [34, 20]) >= REACH || outside(x, y, [34, 20]) >= REACH) &&
  [-7, 7].every((cx) => outside(x, y, [7, 8], [cx, 0]) >= REACH) &&
  Math.hypot(x - 24, y + 16) >= 7 + REACH + 1;

function grid(step: number, open: (x: number, y: number) => boolean): [number, number][] {
  const line = Array.from({ length: 41 }, (_, i) => (i - 20) * step);
  return line.flatMap((y) => line.filter((x) => open(x, y)).map((x): [number, number] => [x, y]));
}

/** Bow of a head solved afresh: mesh, factor and all. */
function bowOf(model: HeadModel, points: readonly (readonly [number, number])[]): number {
  const [like] = model.fasteners;
  const fasteners = points.map(([x, y], i) => ({ ...like, name: `T${i}`, at: [x, y] as [number, number] }));
  try {
    const { cases } = solveHead({ ...model, fasteners }, { quality: 'live' }).result;
    return Math.max(...cases.map(({ bow }) => Math.abs(bow.value)));
  } catch (thrown) {
    if (thrown instanceof Fault && thrown.code === 'MECHANISM') return Infinity;
    throw thrown;
  }
}

const keyOf = (points: readonly (readonly number[])[]) =>
  points
    .map((point) => point.join())
    .sort()
    .join(' ');
const placesOf = (placement: Placement) => placement.map(({ at }) => at);

/** Every placement of `groups` disjoint orbits, none nearer than the spacing, each solved afresh. */
function bruteForce(model: HeadModel, orbits: [number, number][][], size: number, spacing: number) {
  const solved: { points: [number, number][]; bow: number }[] = [];
  const extend = (chosen: [number, number][], from: number): void => {
    if (chosen.length === size) solved.push({ points: chosen, bow: bowOf(model, chosen) });
    if (chosen.length >= size) return;
    for (let i = from; i < orbits.length; i++) {
      const all = [...chosen, ...orbits[i]];
      const isApart = all.every((a, p) =>
        all.every((b, q) => p >= q || Math.hypot(a[0] - b[0], a[1] - b[1]) >= spacing),
      );
      if (all.length <= size && isApart) extend(all, i + 1);
    }
  };
  extend([], 0);
  return solved.sort((a, b) => a.bow - b.bow);
}

/**
 * The search stands on one mesh and each of these solves on its own, graded towards its fasteners. On meshes this coarse
 * bows differ by about a percent, and placements closer than that may change places.
 */
const MESH = 0.02;

describe('the best of all placements', () => {
  it('is that of brute force on a bare body, mirrored about both axes, beside a keep-out', () => {
    const step = 4;
    const orbits = grid(step, openOnBare)
      .filter(([x, y]) => x >= 0 && y >= 0)
      .map(([x, y]): [number, number][] =>
        [...new Set([x, -x])].flatMap((px) => [...new Set([y, -y])].map((py): [number, number] => [px + 0, py + 0])),
      )
      .filter((orbit) => orbit.every(([x, y]) => openOnBare(x, y)));
    const all = bruteForce(bare, orbits, 4, 8);
    const { summary } = study(bare, { mirror: 'both', step, spacing: 8 });
    expect(summary.best.how).toMatchObject({ method: 'all', continuous: false });
    expect(all.length).toBeGreaterThan(15);
    expect(keyOf(placesOf(summary.best.placement))).toBe(keyOf(all[0].points));
    expect(Math.abs(summary.best.bow / all[0].bow - 1)).toBeLessThan(MESH);
  });

  it('is that of brute force on a framed body, three free fasteners over two load cases', () => {
    const step = 9;
    const points = grid(step, openOnFramed);
    const all = bruteForce(
      framed,
      points.map((point) => [point]),
      3,
      30,
    );
    const { summary } = study(framed, { step, spacing: 30, through: 'either' });
    expect(summary.best.how.placements).toBeGreaterThanOrEqual(all.length);
    expect(all.length).toBeGreaterThan(40);
    const own = bowOf(framed, placesOf(summary.best.placement));
    expect(own).toBeLessThan(all[0].bow * (1 + MESH));
    expect(Math.abs(summary.best.bow / own - 1)).toBeLessThan(MESH);
  });

  it('is found by a local search too', () => {
    const plan = { mirror: 'x', count: 6, step: 4, spacing: 6, through: 'either' } as const;
    const all = study(framed, plan).summary;
    const searched = study(framed, { ...plan, most: 0, starts: 16 }).summary;
    expect(all.best.how.method).toBe('all');
    expect(searched.best.how).toMatchObject({ method: 'search', starts: 16 });
    expect(searched.best.bow).toBeCloseTo(all.best.bow, 12);
    expect(searched.best.how.again).toBeGreaterThan(1);
  });
});

describe('a placement study', () => {
  it('keeps out of keep-outs, off sites and edges, and the spacing, in every row', () => {
    const plan = { count: 5, spacing: 9, clearance: 1.5, starts: 3, seed: 5, through: 'either' } as const;
    const { rows, summary } = study(framed, plan);
    const shown = rows.flatMap((row) => (row.kind === 'better' ? [row.placement] : []));
    expect(shown.length).toBeGreaterThan(1);
    for (const points of [...shown, summary.best.placement].map(placesOf)) {
      expect(points).toHaveLength(5);
      for (const [x, y] of points) {
        expect(openOnFramed(x, y)).toBe(true);
        for (const cx of [-7, 7]) expect(outside(x, y, [7, 8], [cx, 0])).toBeGreaterThanOrEqual(REACH + 1.5 - 1e-9);
      }
      for (const [i, a] of points.entries())
        for (const b of points.slice(0, i))
          expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeGreaterThanOrEqual(9 - 1e-9);
    }
    expect(summary.best.siteGap).toBeGreaterThanOrEqual(1.5);
  });

  it('says the same bytes for the same seed, and numbers its rows', () => {
    const plan = { count: 4, starts: 2, seed: 11, step: 5, most: 0 };
    const [one, two] = [study(bare, plan), study(bare, plan)];
    expect(JSON.stringify(one)).toBe(JSON.stringify(two));
    expect(one.rows.map(({ index }) => index)).toEqual(one.rows.map((_, i) => i));
    expect(JSON.parse(JSON.stringify(one.summary))).toEqual(one.summary);
  });

  it('moves the best off the grid to a lower bow, and the solver confirms it', () => {
    const onGrid = study(bare, { mirror: 'both', step: 4 }).summary;
    const off = study(bare, { mirror: 'both', step: 4, continuous: true }).summary;
    expect(off.best.bow).toBeLessThan(onGrid.best.bow * 0.99);
    expect(Math.abs(off.verified.bow / off.best.bow - 1)).toBeLessThan(MESH);
    for (const {
      at: [x, y],
    } of off.best.placement)
      expect(off.best.placement.some(({ at: [px, py] }) => px === -x && py === -y)).toBe(true);
  });

  it('gives a trade curve whose points open as variants', () => {
    const { rows, summary } = study(bare, {
      mirror: 'x',
      step: 4,
      spacing: 8,
      curve: { over: 'clearance', values: [0, 3, 6, 30] },
    });
    const points = rows.flatMap((row) => (row.kind === 'point' ? [row] : []));
    expect(points.map(({ at }) => at)).toEqual([0, 3, 6, 30]);
    expect(points[3]).toMatchObject({ best: null });
    expect(points[3].refused).toContain('No placement was found');
    const bows = points.slice(0, 3).map(({ best }) => best!.bow);
    // What keeps more distance is among what keeps less.
    expect(bows[0]).toBeLessThanOrEqual(bows[1]);
    expect(bows[1]).toBeLessThanOrEqual(bows[2]);
    expect(summary.best.bow).toBe(bows[0]);
    for (const { best } of points.slice(0, 3)) {
      const variant = applyPlacement(bare, best!.placement);
      const own = Math.max(
        ...solveHead(variant, { quality: 'live' }).result.cases.map(({ bow }) => Math.abs(bow.value)),
      );
      expect(Math.abs(own / best!.bow - 1)).toBeLessThan(MESH);
    }
  });

  it('walks a curve over the counts that mirrored sets of open positions add up to', () => {
    const counts = (model: HeadModel, plan: PlacementPlan) => {
      const { rows } = study(model, { step: 4, starts: 1, most: 2000, continuous: false, ...plan });
      return rows.flatMap((row) => (row.kind === 'point' ? [row] : []));
    };
    // The site covers the centre: fours, and pairs on the x axis.
    const both = counts(bare, { count: 4, mirror: 'both', curve: { over: 'count' } });
    expect(both.map(({ at }) => at)).toEqual([4, 6, 8, 10, 12]);
    for (const { at, best } of both) expect(best?.placement).toHaveLength(at);
    // Positions on the mirror of the bare body allow odd counts as well.
    const one = counts(bare, { mirror: 'x', curve: { over: 'count' } });
    expect(one.map(({ at }) => at)).toEqual([3, 4, 5, 6, 7, 8]);
    for (const { at, best } of one) expect(best?.placement).toHaveLength(at);
    const [odd] = counts(bare, { count: 4, mirror: 'both', curve: { over: 'count', values: [5] } });
    expect(odd).toMatchObject({ best: null, refused: expect.stringMatching(/do not add up .* Use another count/) });
  });

  it('lets fixed fasteners stay and keeps to the limit on fasteners', () => {
    const fasteners = framed.fasteners.map((fastener) => ({ ...fastener, preload: 60 }));
    const model = { ...framed, fasteners };
    const plan: PlacementPlan = { fixed: ['S'], count: 4, step: 5, through: 'either' };
    const free = study(model, plan).summary;
    const use = ({ verified }: PlacementSummary) =>
      verified.criteria.find(({ criterion }) => criterion === 'fasteners')?.value;
    expect(free.best.placement[0]).toEqual({ name: 'S', at: [0, -19], like: 'S' });
    const worst = use(study({ ...model, limits: { ...model.limits, fastener: 0.99 } }, plan).summary)!;
    const limit = 0.97 * worst;
    const kept = study({ ...model, limits: { ...model.limits, fastener: limit } }, plan).summary;
    expect(kept.best.keepsLimits).toBe(true);
    expect(use(kept)).toBeLessThan(limit * 1.005);
    expect(kept.best.bow).toBeGreaterThanOrEqual(free.best.bow);
  });
});

describe('a placement plan', () => {
  it.each([
    [{ count: 0 }, 'OUT_OF_RANGE', 'count'],
    [{ counts: 4 }, 'SCHEMA', 'counts'],
    [{ groups: [{ count: 4 }], mirror: 'x' }, 'SCHEMA', 'mirror'],
  ])('is refused as %j', (plan, code, path) => {
    expect(() => checkPlacementPlan(plan)).toThrow(expect.objectContaining({ code, path }));
  });

  it.each([
    [{ fixed: ['nobody'] }, 'SCHEMA', 'fixed.0'],
    [{ count: 1, fixed: ['NW'] }, 'OUT_OF_RANGE', 'count'],
    [{ clearance: 100 }, 'OUTSIDE', 'step'],
    [{ step: 0.02 }, 'TOO_LARGE', 'step'],
    [{ count: 2, step: 6 }, 'MECHANISM', 'count'],
  ])('is refused on a head as %j', (plan, code, path) => {
    expect(() => study(bare, plan)).toThrow(expect.objectContaining({ code, path }));
  });

  it('asks which fastener to copy when they are not alike', () => {
    const [first, ...rest] = bare.fasteners;
    const model = { ...bare, fasteners: [{ ...first, stiffness: 'rigid' as const }, ...rest] };
    expect(() => study(model, {})).toThrow(expect.objectContaining({ code: 'SCHEMA', path: 'like' }));
  });
});
