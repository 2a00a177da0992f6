import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { HeadModel } from '../../src/model/head-model.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { pushingRemarks } from '../../src/results/pushing-remarks.ts';
import { solveHead } from '../../src/solve-head.ts';
import { twoByTwo } from '../model/two-by-two.ts';
import { caseOf } from './criteria/case-of.ts';

// Two more fasteners close beside the sites take the load; the head levers over them and presses its corners on the board.
const levering: HeadModel = {
  ...twoByTwo,
  frame: { ...twoByTwo.frame!, outer: { rectangle: [100, 46] } },
  fasteners: [
    ...twoByTwo.fasteners.map((fastener) => ({
      ...fastener,
      at: [2 * fastener.at[0], fastener.at[1]] as [number, number],
    })),
    { name: 'W', at: [-20, 0], screw: 'M2.5' },
    { name: 'E', at: [20, 0], screw: 'M2.5' },
  ],
  mesh: { size: 4 },
};
const pushes = /Fasteners? (.*) push(?:es)? the head off the board, with up to (\S+) N/;

function solved(model: HeadModel) {
  const { result } = solveHead(model, { quality: 'live' });
  const found = result.verdict.remarks.map((remark) => pushes.exec(remark)).filter((match) => match !== null);
  return { result, found };
}

test('names the fasteners that push on the head, and the largest force', () => {
  const { result, found } = solved(levering);
  const [{ fasteners }] = result.cases;
  const pushing = fasteners.filter(({ reaction }) => reaction > 1);
  expect(pushing.map(({ name }) => name)).toEqual(['F1', 'F2', 'F3', 'F4']);
  expect(found).toHaveLength(1);
  expect(found[0][1]).toBe('F1, F2, F3, F4');
  expect(Number(found[0][2])).toBeCloseTo(Math.max(...pushing.map(({ reaction }) => reaction)), 1);
  expect(found[0].input).toContain('in case "mounted"');
});

test('is silent of a push that is small beside what the fasteners carry', () => {
  // Two fasteners beside the touched half push with 2 N, of 600 N and more that all of them carry when nothing is touched.
  const path = new URL('../../../../models/row-of-eight-far-fasteners.json', import.meta.url);
  const { result, found } = solved(checkHeadModel(JSON.parse(readFileSync(path, 'utf8'))));
  const most = Math.max(...result.cases.flatMap(({ fasteners }) => fasteners.map(({ reaction }) => reaction)));
  expect(most).toBeGreaterThan(1);
  expect(found).toEqual([]);
});

test('is silent where fasteners only hold the head back, and of those whose sense is given', () => {
  expect(solved(twoByTwo).found).toEqual([]);
  const given = (extra: object): HeadModel => ({
    ...levering,
    fasteners: levering.fasteners.map((fastener) => ({ ...fastener, ...extra })),
  });
  expect(solved(given({ acts: 'both' })).found).toEqual([]);
  // Under a preload the clamped parts carry the push.
  expect(solved(given({ preload: 500 })).found).toEqual([]);
  expect(solved(given({ acts: 'pull' })).found).toEqual([]);
});

test('speaks of one fastener by itself, and says of several which pushes most', () => {
  const told = (...reactions: number[]) => {
    const fasteners = reactions.map((reaction, i) => ({
      ...{
        name: `F${i + 1}`,
        at: [0, 0] as const,
        reaction,
        w: 0,
        holds: true,
        stiffness: null,
        terms: null,
        joint: null,
      },
    }));
    return pushingRemarks(twoByTwo, [caseOf({ fasteners })]);
  };
  expect(told(-60, 20, -60, -60)).toEqual([
    expect.stringMatching(
      /^Fastener F2 pushes .* with up to 20\.0 N in case "mounted"\. As modelled it acts both ways\./,
    ),
  ]);
  expect(told(-60, 20, -60, 150)).toEqual([
    expect.stringMatching(
      /^Fasteners F2, F4 push .* with up to 150 N in case "mounted", F4 the most\. As modelled they act/,
    ),
  ]);
});
