import { solvePlate } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { type CheckValue, roarkPlates, shearPlates, thinPlates } from './check-values.ts';
import { plates } from './plates.ts';

const MOST_DOFS = 20_000;

const groups: Readonly<Record<string, readonly CheckValue[]>> = {
  'thin plates': thinPlates,
  'plates with transverse shear': shearPlates,
  "Roark's formulas": roarkPlates,
};
const all = Object.values(groups).flat();

/** The plate's answer at its named points, solved at first use. */
const answers = new Map<string, ReturnType<typeof solve>>();
function answer(name: string): ReturnType<typeof solve> {
  const known = answers.get(name) ?? solve(name);
  answers.set(name, known);
  return known;
}

function solve(name: string) {
  const { problem, points, w, m } = plates[name];
  const result = solvePlate({ ...problem, report: { at: Object.values(points) } });
  const index = (at: string): number => Object.keys(points).indexOf(at);
  return {
    result,
    value: (quantity: CheckValue['quantity'], at: string): number =>
      quantity === 'w' ? result.w.at[index(at)] / w : result.moments.at[index(at)][quantity] / m,
  };
}

for (const [group, values] of Object.entries(groups))
  describe(group, () => {
    for (const check of values)
      it(`${check.plate}: ${check.quantity} at the ${check.at} is ${check.value} (${check.source}; ${check.basis})`, () => {
        const value = answer(check.plate).value(check.quantity, check.at);
        const deviation = value / check.value - 1;
        const report = `${value} against ${check.value}: ${(100 * deviation).toFixed(3)} %`;
        expect(Math.abs(deviation), report).toBeLessThanOrEqual(check.tolerance);
      });
  });

describe('the check values', () => {
  it('speak of every plate, and every plate is posed', () => {
    expect(new Set(all.map(({ plate }) => plate))).toEqual(new Set(Object.keys(plates)));
  });

  it.each(Object.keys(plates))('need no more than 20,000 dofs and leave no residual: %s', (name) => {
    const { dofs, residual } = answer(name).result;
    expect(dofs).toBeLessThanOrEqual(MOST_DOFS);
    expect(residual).toBeLessThan(1e-12);
  });

  it.each(Object.keys(plates))('balance where only points hold the plate: %s', (name) => {
    const { problem } = plates[name];
    const { reactions, load } = answer(name).result;
    if (problem.supports === undefined) return expect(reactions).toEqual([]);
    expect(reactions.reduce((sum, r) => sum + r, 0) / load).toBeCloseTo(-1, 9);
  });
});
