import { describe, expect, it } from 'vitest';
import { budgetFigures, twoLimits } from '../../src/budget/budget-figures.ts';
import { type Budget, budgetOf, createBudgetStore, writeBudget } from '../../src/budget/budget-store.ts';

const budget: Budget = {
  limit: '60',
  contributors: [
    { name: 'tilt', value: '10', adds: 'systematic' },
    { name: 'a', value: '3', adds: 'independent' },
    { name: 'b', value: '4,0', adds: 'independent' },
    { name: 'c', value: '12', adds: 'independent' },
  ],
};

describe('planarity budget', () => {
  it('adds systematic ones, takes independent ones by root-sum-square and tells what each may be', () => {
    // By hand: 20 + 10 = 30; sqrt(9 + 16 + 144) = 13; 43 of 60; at worst 30 + 19 = 49.
    const figures = budgetFigures(budget, { value: 0.02, error: 0.001 })!;
    expect(figures.sums.systematic).toBeCloseTo(0.03, 12);
    expect(figures.sums.independent).toBeCloseTo(0.013, 12);
    expect(figures.sums.worstCase).toBeCloseTo(0.049, 12);
    expect(figures.outcome).toBe('pass');
    expect(figures.lines[0].most).toBeCloseTo(0.037, 12);
    // sqrt(30^2 - 3^2 - 4^2) = 29.58
    expect(figures.lines[4].most).toBeCloseTo(Math.sqrt(900 - 25) / 1000, 12);
  });

  it('is marginal within the error of the bow, and over beyond it', () => {
    for (const limit of ['43.5', '42.5'])
      expect(budgetFigures({ ...budget, limit }, { value: 0.02, error: 0.001 })?.outcome).toBe('marginal');
    expect(budgetFigures({ ...budget, limit: '41' }, { value: 0.02, error: 0.001 })?.outcome).toBe('fail');
  });

  it('has no figures while a value is none', () => {
    for (const value of ['', 'much', '-1', '1e9'])
      expect(
        budgetFigures(
          { ...budget, contributors: [{ name: 'x', value, adds: 'independent' }] },
          { value: 0.02, error: null },
        ),
      ).toBeNull();
    expect(budgetFigures({ ...budget, limit: '0' }, { value: 0.02, error: null })).toBeNull();
  });

  it('is kept by head, and takes whatever the storage holds or refuses', () => {
    const held: Record<string, string> = {};
    const storage = {
      getItem: (key: string) => held[key] ?? null,
      setItem: (key: string, value: string) => {
        held[key] = value;
      },
    };
    writeBudget(createBudgetStore(storage), 'Kestrel', () => budget);
    expect(budgetOf(createBudgetStore(storage).getState(), 'Kestrel')).toEqual(budget);
    expect(budgetOf(createBudgetStore(storage).getState(), 'Wren')).toEqual(budget);
    for (const bad of ['[1', '7', 'null', '{"Kestrel": {"contributors": [7, {"name": 1}]}}', '{"Kestrel": null}']) {
      held['flathead-budget'] = bad;
      expect(typeof budgetOf(createBudgetStore(storage).getState(), 'Kestrel').limit).toBe('string');
    }
    const refusing = {
      getItem: () => null,
      setItem: () => {
        throw new Error('full');
      },
    };
    const store = createBudgetStore(refusing);
    writeBudget(store, 'Kestrel', () => budget);
    expect(budgetOf(store.getState(), 'Kestrel')).toEqual(budget);
  });
});

describe('the two limits of a bow', () => {
  const budget = (limit: string): Budget => ({
    limit,
    contributors: [
      { name: 'Tilt', value: '10', adds: 'systematic' },
      { name: 'Tip', value: '20', adds: 'independent' },
      { name: 'Board', value: '30', adds: 'independent' },
    ],
  });

  it('fit by chance where only the worst case is over: 40 + 10 + root-sum-square 36.1, 100 at worst', () => {
    const at = (limit: string) => budgetFigures(budget(limit), { value: 0.04, error: null })!;
    expect(['80', '90', '110'].map((limit) => [at(limit).outcome, at(limit).byChance])).toEqual([
      ['fail', false],
      ['pass', true],
      ['pass', false],
    ]);
  });

  it('are related in words', () => {
    const bow = { value: 0.0396, limit: 0.035, outcome: 'fail' } as const;
    expect(twoLimits(bow, 'pass')).toMatch(
      /^The verdict above fails the bow alone, 39\.6 of 35\.0 µm, even though .* Both must hold\.$/,
    );
    expect(twoLimits(bow, 'fail')).toContain('Neither holds');
    expect(twoLimits({ ...bow, value: 0.03, outcome: 'pass' }, 'fail')).toContain('passes the bow alone, 30.0 of 35.0');
    expect(twoLimits({ ...bow, value: 0.03, outcome: 'pass' }, 'marginal')).toContain('Both hold');
  });
});
