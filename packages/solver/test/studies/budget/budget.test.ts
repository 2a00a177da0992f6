import { describe, expect, it } from 'vitest';
import { budgetSteps, budgetStudy } from '../../../src/studies/budget/budget.ts';
import type { BudgetPlan } from '../../../src/studies/budget/plan.ts';
import { faultOf } from '../../model/fault-of.ts';
import { thinHead } from '../small-head.ts';

function run(plan: BudgetPlan) {
  const steps = budgetSteps(thinHead, plan);
  const rows = [];
  for (let next = steps.next(); ; next = steps.next()) {
    if (next.done) return { rows, summary: next.value };
    rows.push(next.value);
  }
}

describe('a planarity budget, by hand', () => {
  // Systematic 10 + 20 = 30; independent 30, 40: root-sum-square 50; total 80, worst case 100.
  const plan: BudgetPlan = {
    limit: 0.1,
    contributors: [
      { name: 'tilt', value: 0.01, adds: 'systematic' },
      { name: 'bow', value: 0.02, adds: 'systematic' },
      { name: 'tips', value: 0.03, adds: 'independent' },
      { name: 'board', value: 0.04, adds: 'independent' },
    ],
  };
  const { rows, summary } = run(plan);

  it('adds systematic ones linearly, independent ones by root-sum-square, and all beside it', () => {
    expect(summary).toEqual({
      limit: 0.1,
      systematic: 0.03,
      independent: 0.05,
      total: 0.08,
      worstCase: 0.1,
      left: 0.02,
      leftWorstCase: 0,
      outcome: 'pass',
    });
  });

  it('says what is left for each: 20 for a systematic one; sqrt(70^2 - 40^2) and sqrt(70^2 - 30^2) in all', () => {
    expect(rows.map(({ left }) => left)).toEqual([0.02, 0.02, expect.any(Number), expect.any(Number)]);
    expect(rows[2].most).toBeCloseTo(Math.sqrt(0.07 ** 2 - 0.04 ** 2), 9);
    expect(rows[3].most).toBeCloseTo(Math.sqrt(0.07 ** 2 - 0.03 ** 2), 9);
  });

  it('just fits with any one of them at its most', () => {
    rows.forEach(({ most }, i) => {
      const contributors = plan.contributors.map((one, k) => (k === i ? { ...one, value: most! } : one));
      expect(run({ ...plan, contributors }).summary.total).toBeCloseTo(0.1, 8);
    });
  });

  it('says so when the others alone are over, and by how much one must shrink', () => {
    const { rows, summary } = run({ ...plan, limit: 0.075 });
    expect(summary.outcome).toBe('fail');
    expect(rows[0]).toMatchObject({ most: 0.005, left: -0.005 });
    expect(run({ ...plan, limit: 0.04 }).rows[0]).toMatchObject({ most: null, left: null });
  });
});

describe('a budget with the bow of the verdict', () => {
  const bow: BudgetPlan['contributors'][number] = { name: 'bow', from: 'bow' };

  it('takes it with its error, and is marginal within it', () => {
    const { rows, summary } = run({ limit: 0.1, contributors: [bow] });
    expect(rows[0].value).toBeGreaterThan(0.005);
    expect(rows[0]).toMatchObject({ adds: 'systematic', from: 'bow at site A1, case "mounted"' });
    expect(summary).toMatchObject({ total: rows[0].value, outcome: 'pass' });
    const limit = rows[0].value + rows[0].error! / 2;
    expect(run({ limit, contributors: [bow] }).summary.outcome).toBe('marginal');
    expect(run({ limit: rows[0].value - 2 * rows[0].error!, contributors: [bow] }).summary.outcome).toBe('fail');
  });

  it.each<[BudgetPlan['contributors'][number], string]>([
    [{ name: 'x', value: 0.1 }, 'does not say how it adds up'],
    [{ name: 'x', value: 0.1, from: 'bow' }, 'not both'],
    [{ name: 'x' }, 'needs either'],
    [{ name: 'x', from: 'flatness' }, 'which is not judged'],
  ])('refuses %j', (contributor, words) => {
    expect(faultOf(() => budgetStudy(thinHead, { limit: 1, contributors: [contributor] })).message).toContain(words);
  });
});
