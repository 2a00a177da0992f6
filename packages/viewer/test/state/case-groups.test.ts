import { solveHead } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { caseGroups } from '../../src/state/case-groups.ts';
import { sampleHead } from './sample-head.ts';

const [shown] = solveHead(sampleHead, { quality: 'live' }).result.cases;
const of = (name: string, bow: number, family?: string) => ({
  ...shown,
  name,
  ...(family === undefined ? {} : { family }),
  bow: { ...shown.bow, value: bow },
});

describe('caseGroups', () => {
  it('puts what was enumerated over a wafer under its case, largest bow first, in the order of the model', () => {
    const groups = caseGroups([
      of('mounted', 0.02),
      of('edge: A1', 0.01, 'edge'),
      of('edge: B1', -0.03, 'edge'),
      of('hot', 0.04),
      of('edge: all', 0.002, 'edge'),
    ]);
    expect(groups.map(({ name, cases }) => [name, ...cases.map((member) => member.name)])).toEqual([
      ['mounted', 'mounted'],
      ['edge', 'edge: B1', 'edge: A1', 'edge: all'],
      ['hot', 'hot'],
    ]);
  });
});
