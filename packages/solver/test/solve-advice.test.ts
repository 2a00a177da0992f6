import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { HeadModel } from '../src/model/head-model.ts';
import { keepOutRemarks } from '../src/model/keep-outs.ts';
import { readHeadModel } from '../src/model/read.ts';
import { type Advice, adviseHead } from '../src/solve-advice.ts';
import { solveHead } from '../src/solve-head.ts';
import { altered, twoByTwo } from './model/two-by-two.ts';

const shipped = (name: string): HeadModel =>
  readHeadModel(readFileSync(new URL(`../../../models/${name}.json`, import.meta.url), 'utf8'));

function advised(model: HeadModel): Advice {
  const advice = adviseHead(model, solveHead(model));
  if (advice === null) throw new Error('no advice');
  return advice;
}

const bowOf = (model: HeadModel) => {
  const { value, error } = solveHead(model).result.verdict.criteria[0];
  return { value, error: error ?? 0 };
};

/** Tight enough that it fails, loose enough that a move suffices. */
const nearly: HeadModel = { ...twoByTwo, limits: { bow: 0.97 * bowOf(twoByTwo).value } };

describe('adviseHead', () => {
  it('says of each change what solving the changed head says', { timeout: 60_000 }, () => {
    for (const model of [shipped('kestrel-baseline'), nearly]) {
      const before = bowOf(model);
      const { moves } = advised(model);
      expect(moves.map(({ kind }) => kind)).toEqual(['fasteners', 'thickness']);
      for (const { model: changed, gain, value, sentence, within } of moves) {
        const after = bowOf(changed);
        // The advice is solved on the mesh of the run, the changed head on its own: they differ by both errors.
        const slack = 2 * (before.error + after.error) + 0.002 * before.value;
        expect(Math.abs(value - after.value)).toBeLessThan(slack);
        expect(Math.abs(gain - (before.value - after.value))).toBeLessThan(slack);
        const said = Number(/gains ([\d.]+) um/.exec(sentence)?.[1]);
        expect(Math.abs(said - 1000 * (before.value - after.value))).toBeLessThan(1000 * slack + 0.05);
        expect(within).toBe(after.value < model.limits.bow);
      }
    }
  });

  it('moves no further than suffices, and only what it names', () => {
    const [move] = advised(nearly).moves;
    expect(move.within).toBe(true);
    expect(move.sentence).toMatch(/^Moving .* 1 mm .* which is enough\.$/);
    const moved = move.model.fasteners.filter(({ at }, i) => String(at) !== String(nearly.fasteners[i].at));
    expect(move.sentence).toContain(moved.length === 4 ? 'all 4 fasteners' : moved[0].name);
    expect({ ...move.model, fasteners: [] }).toEqual({ ...nearly, fasteners: [] });
  });

  it('leads no screw into a keep-out or over the edge of what it sits on', () => {
    const kestrel = shipped('kestrel-baseline');
    expect(keepOutRemarks(advised(kestrel).moves[0].model)).toEqual([]);
    // Screw heads of 4.5 mm beside a body of 72 x 46 mm.
    for (const { at } of advised(kestrel).moves[0].model.fasteners)
      expect(Math.abs(at[0]) >= 36 + 2.25 || Math.abs(at[1]) >= 23 + 2.25).toBe(true);
    // Keep-outs all around the fasteners leave the thickness.
    const walls = [-1, 1].flatMap((sign) => [
      { name: `x${sign}`, shape: { rectangle: [2, 60], centre: [sign * 17.5, 0] } },
      { name: `y${sign}`, shape: { rectangle: [60, 2], centre: [0, sign * 14.6] } },
    ]);
    const fenced = altered(nearly, { keepOuts: walls }) as HeadModel;
    expect(advised(fenced).moves.map(({ kind }) => kind)).toEqual(['thickness']);
  });

  it('is silent about a head that passes', () => {
    expect(adviseHead(twoByTwo, solveHead(twoByTwo))).toBeNull();
  });
});
