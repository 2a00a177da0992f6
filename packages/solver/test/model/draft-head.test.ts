import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Fault } from '../../src/fault/fault.ts';
import { draftHead, type HeadDraft } from '../../src/model/draft-head.ts';
import { solveHead } from '../../src/solve-head.ts';

const draft: HeadDraft = {
  name: 'draft',
  columns: 3,
  rows: 2,
  die: [5, 6],
  skip: [1, 1],
  probes: { count: 200, pitch: 0.35, preload: 0.08, touchdown: 0.15, rate: 0.5 },
  body: { material: 'alumina-96', thickness: 5 },
  frame: { material: 'stainless-17-4', thickness: 4, ribs: 'columns' },
  fasteners: 6,
  screw: 'M2.5',
  bow: 0.03,
};

const faultOf = (answers: unknown): Fault => {
  try {
    draftHead(answers);
  } catch (thrown) {
    if (thrown instanceof Fault) return thrown;
    throw thrown;
  }
  throw new Error('no fault');
};

describe('draftHead', () => {
  it('gives every probe its hole and keeps all of it inside the body', () => {
    const { sites, body, frame, fasteners } = draftHead(draft);
    const [fx, fy] = sites.probes.field;
    // Holes of a square array on the field: columns times rows of them, by hand.
    expect(Math.round(fx / 0.35) * Math.round(fy / 0.35)).toBeGreaterThanOrEqual(200);
    expect(Math.round(fx / 0.35) * (Math.round(fy / 0.35) - 1)).toBeLessThan(200);
    // Site area by hand: pitch is die times two.
    const [width, height] = [2 * 10 + fx, 12 + fy];
    const [bw, bh] = 'rectangle' in body.outline ? body.outline.rectangle : [0, 0];
    const [ww, wh] = frame && 'rectangle' in frame.window ? frame.window.rectangle : [0, 0];
    const [ow, oh] = frame && 'rectangle' in frame.outer ? frame.outer.rectangle : [0, 0];
    for (const [least, window, bodySide, outer] of [
      [width, ww, bw, ow],
      [height, wh, bh, oh],
    ]) {
      expect(window).toBeGreaterThan(least);
      expect(bodySide).toBeGreaterThan(window);
      expect(outer).toBeGreaterThan(bodySide);
    }
    // The screw heads, 4.5 mm, sit between body and edge of the frame.
    for (const { at } of fasteners) {
      expect(Math.abs(at[0]) + 2.25 < ow / 2 && Math.abs(at[1]) + 2.25 < oh / 2).toBe(true);
      expect(Math.abs(at[0]) - 2.25 > bw / 2 || Math.abs(at[1]) - 2.25 > bh / 2).toBe(true);
    }
    expect(fasteners.map(({ name }) => name)).toEqual(['NW', 'NE', 'SW', 'SE', 'N', 'S']);
  });

  it('can be solved whatever the answers', { timeout: 120_000 }, () => {
    const pattern = fc.record({
      columns: fc.integer({ min: 1, max: 4 }),
      rows: fc.integer({ min: 1, max: 4 }),
      die: fc.tuple(fc.integer({ min: 3, max: 9 }), fc.integer({ min: 3, max: 9 })),
      skip: fc.tuple(fc.integer({ min: 1, max: 2 }), fc.integer({ min: 1, max: 2 })),
      count: fc.integer({ min: 1, max: 150 }),
      framed: fc.constantFrom<'none' | 'columns' | 'rows' | 'both' | null>(null, 'none', 'columns', 'rows', 'both'),
      fasteners: fc.constantFrom<4 | 6 | 8>(4, 6, 8),
    });
    fc.assert(
      fc.property(pattern, ({ columns, rows, die, skip, count, framed, fasteners }) => {
        const model = draftHead({
          ...draft,
          ...{ columns, rows, die, skip, fasteners },
          probes: { ...draft.probes, count, pitch: 0.3 },
          frame: framed === null ? undefined : { material: 'stainless-17-4', thickness: 4, ribs: framed },
        });
        const { result } = solveHead(model, { quality: 'live' });
        const load = result.cases[0].load;
        // Everything that the probes push with is carried.
        expect(load).toBeCloseTo(columns * rows * count * 0.08, 9);
        expect(result.cases[0].bow.value).not.toBeNaN();
      }),
      { numRuns: 25, seed: 7 },
    );
  });

  it('says what to change where the answers do not go together', () => {
    const dense = faultOf({ ...draft, skip: [0, 1], probes: { ...draft.probes, count: 900 } });
    expect(dense).toMatchObject({ code: 'OVERLAP', path: 'skip.0' });
    expect(dense.message).toMatch(/900 probes at 0\.35 mm need .* sites are only 5 mm apart there/);
    expect(faultOf({ ...draft, columns: 0 })).toMatchObject({ code: 'OUT_OF_RANGE', path: 'columns' });
    expect(faultOf({ ...draft, body: { ...draft.body, thickness: -1 } })).toMatchObject({ path: 'body.thickness' });
    expect(faultOf({ ...draft, screw: 'M99' })).toMatchObject({ code: 'UNKNOWN_SCREW', path: 'screw' });
    expect(faultOf({ ...draft, probes: { ...draft.probes, preload: 0.6 } })).toMatchObject({
      code: 'OUT_OF_RANGE',
      path: 'probes.touchdown',
    });
    expect(faultOf(null).code).toBe('SCHEMA');
    // 14 holes at 0.36 mm leave 0.06 mm of a pitch of 5.1 mm.
    const tight = { columns: 2, rows: 1, die: [5.1, 5.1], skip: [0, 0] };
    const { message, path } = faultOf({ ...draft, ...tight, probes: { ...draft.probes, count: 196, pitch: 0.36 } });
    expect([path, message]).toEqual(['frame.ribs', expect.stringMatching(/no room for ribs between columns/)]);
  });
});
