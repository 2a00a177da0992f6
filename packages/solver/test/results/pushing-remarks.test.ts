import { expect, test } from 'vitest';
import type { HeadModel } from '../../src/model/head-model.ts';
import { solveHead } from '../../src/solve-head.ts';
import { twoByTwo } from '../model/two-by-two.ts';

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
  const [{ fasteners, load }] = result.cases;
  const pushing = fasteners.filter(({ reaction }) => reaction > 0.02 * load);
  expect(pushing.map(({ name }) => name)).toEqual(['F1', 'F2', 'F3', 'F4']);
  expect(found).toHaveLength(1);
  expect(found[0][1]).toBe('F1, F2, F3, F4');
  expect(Number(found[0][2])).toBeCloseTo(Math.max(...pushing.map(({ reaction }) => reaction)), 1);
  expect(found[0].input).toContain('in case "mounted"');
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
