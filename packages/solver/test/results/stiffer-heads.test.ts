import { describe, expect, it } from 'vitest';
import { compileHead } from '../../src/model/compile.ts';
import type { HeadModel } from '../../src/model/head-model.ts';
import { headsLieFlat, stifferHeads } from '../../src/results/stiffer-heads.ts';
import { altered, twoByTwo } from '../model/two-by-two.ts';

const planOf = (model: HeadModel) => compileHead(model).plan;
const ribsOffered = (model: HeadModel) =>
  stifferHeads(model, planOf(model))
    .filter(({ kind }) => kind === 'ribs')
    .map(({ steps: [step] }) => ({ what: step.what, ribs: step.apply(model).frame?.ribs ?? [] }));

/** Four columns in one row, 8 mm apart: gaps of 3.5 mm between fields of 4.5 mm. */
const row = altered(twoByTwo, {
  'sites.columns': 4,
  'sites.rows': 1,
  'sites.die': [8, 5],
  'sites.skip': [0, 0],
  'frame.window.rectangle': [34, 28],
  'frame.outer.rectangle': [60, 46],
  'body.outline.rectangle': [60, 46],
}) as HeadModel;

describe('stifferHeads', () => {
  it('offers ribs of 0.6 of the gap, in the gaps that have none alone', () => {
    const [all, ...more] = ribsOffered(row);
    expect(more).toEqual([]);
    expect(all.ribs).toEqual([{ between: 'columns', width: 2.1 }]);
    const ribbed = (...skips: number[][]): HeadModel =>
      altered(row, { 'frame.ribs': skips.map((skip) => ({ between: 'columns', width: 2, skip })) }) as HeadModel;
    const [middle] = ribsOffered(ribbed([2]));
    expect(middle.ribs.at(-1)).toEqual({ between: 'columns', width: 2.1, skip: [1, 3] });
    expect(middle.what).toContain('a rib 2.1 mm wide between the columns that have none');
    expect(ribsOffered(ribbed([1, 3], [2]))).toEqual([]);
  });

  it('refuses a rib under a screw head', () => {
    const plain = altered(row, { 'fasteners.0.at': [-8, 0] }) as HeadModel;
    const [{ ribs }] = ribsOffered(row);
    const { frame } = plain;
    if (frame === undefined) throw new Error('no frame');
    // A rib along x = -8 beside a screw head there: both are compiled without the fastener's own room being asked.
    const after = planOf({ ...row, frame: { ...frame, ribs } });
    expect(headsLieFlat(plain, planOf(row), after)).toBe(false);
    expect(headsLieFlat(row, planOf(row), after)).toBe(true);
  });

  it('thickens ribs with their frame, and gives a head without one a frame around its sites', () => {
    const ribbed = altered(row, { 'frame.ribs': [{ between: 'columns', width: 2, thickness: 5 }] }) as HeadModel;
    const thicker = stifferHeads(ribbed, planOf(ribbed)).find(({ kind }) => kind === 'frame')!;
    for (const { by, apply } of thicker.steps) {
      const { frame } = apply(ribbed);
      expect([frame?.thickness, frame?.ribs?.[0].thickness]).toEqual([3 + by, 5 + by]);
    }
    const bare = altered(row, { frame: undefined }) as HeadModel;
    const [{ steps }] = stifferHeads(bare, planOf(bare));
    const { frame } = steps[0].apply(bare);
    // Sites span 3 x 8 + 4.5 by 4 mm; 3 mm free on each side, up to half millimetres.
    expect(frame?.window).toMatchObject({ rectangle: [34.5, 10] });
    expect(() => planOf(steps[0].apply(bare))).not.toThrow();
  });
});
