import { describe, expect, it } from 'vitest';
import type { HeadModel } from '../../src/model/head-model.ts';
import { readHeadModel } from '../../src/model/read.ts';
import { solveHead } from '../../src/solve-head.ts';
import { faultOf } from './fault-of.ts';
import { altered, twoByTwo } from './two-by-two.ts';

const straight = { pitch: 0.28, diameter: 0.13, pattern: 'square' };
const head = (holes: object): HeadModel =>
  readHeadModel(JSON.stringify(altered(twoByTwo, { 'sites.probes.holes': holes })));
const bored = (counterbore: object) => head({ ...straight, counterbore });
const bow = (model: HeadModel) => solveHead(model, { quality: 'live' }).result.verdict;

describe('a head with counterbored probe holes', () => {
  it('bows more than with straight ones, less than with wide ones, and says that it is an estimate', () => {
    const verdicts = [
      bow(head(straight)),
      bow(bored({ diameter: 0.2, depth: 1, side: 'board' })),
      bow(bored({ diameter: 0.2, depth: 2.5, side: 'board' })),
      bow(head({ ...straight, diameter: 0.2 })),
    ];
    const bows = verdicts.map(({ criteria }) => criteria[0].value);
    for (let k = 1; k < bows.length; k++) expect(bows[k]).toBeGreaterThan(bows[k - 1]);
    const estimates = verdicts.map(({ remarks }) => remarks.some((remark) => remark.includes('estimate')));
    expect(estimates).toEqual([false, true, true, false]);
  });

  it.each([
    [{ diameter: 0.2, depth: 4, side: 'board' }, 'depth'],
    [{ diameter: 0.12, depth: 1, side: 'device' }, 'diameter'],
    [{ diameter: 0.25, depth: 1, side: 'device' }, 'diameter'],
  ])('is refused with the path in the model: %o', (counterbore, key) => {
    const fault = faultOf(() => solveHead(bored(counterbore)));
    expect(fault).toMatchObject({ code: 'OUT_OF_RANGE', path: `sites.probes.holes.counterbore.${key}` });
    expect(fault.message).toMatch(/Make it|Use a diameter of/);
  });
});

describe('a head with a tolerance', () => {
  const asked = (mesh: HeadModel['mesh']) => solveHead({ ...twoByTwo, limits: { bow: 0.01 }, ...{ mesh } });

  it('is refined until its error is below that share of the limit, and keeps the mesh while a fastener is dragged', () => {
    const plain = asked(undefined).result.verdict.criteria[0];
    const tolerance = (0.4 * plain.error!) / plain.limit;
    const { result, stages } = asked({ tolerance });
    expect(result.verdict.criteria[0].error).toBeLessThanOrEqual(tolerance * plain.limit);
    expect(Math.abs(result.verdict.criteria[0].value - plain.value)).toBeLessThan(2 * plain.error!);
    const moved = {
      ...twoByTwo,
      fasteners: twoByTwo.fasteners.map((f, i) => (i === 0 ? { ...f, at: [-20, 18] as [number, number] } : f)),
    };
    const dragged = solveHead(
      { ...moved, limits: { bow: 0.01 }, mesh: { tolerance } },
      { quality: 'live', previous: stages },
    );
    expect(dragged.result.mesh).toBe(result.mesh);
  });

  it('that is taken away gets its first mesh back', () => {
    const plain = asked(undefined);
    const { error, limit } = plain.result.verdict.criteria[0];
    const refined = asked({ tolerance: (0.3 * error!) / limit });
    const back = solveHead({ ...twoByTwo, limits: { bow: 0.01 } }, { previous: refined.stages });
    expect(refined.result.dofs).toBeGreaterThan(1.5 * plain.result.dofs);
    expect(back.result.dofs).toBe(plain.result.dofs);
    expect(back.result.verdict.criteria[0].value).toBeCloseTo(plain.result.verdict.criteria[0].value, 12);
  });
});
