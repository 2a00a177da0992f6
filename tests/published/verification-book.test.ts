import { solvePlate } from '@flathead/solver';
import {
  type PlateModel,
  problemOf,
  type VerificationRow,
  verificationBook,
  verificationCases,
  verificationSteps,
  verificationTopics,
} from '@flathead/solver/verification';
import { describe, expect, it } from 'vitest';

const MOST_NODES = 20_000 / 3;

/** Rows of a topic, solved at first use. */
const solved = new Map<string, readonly VerificationRow[]>();
function rowsOf(topic: string): readonly VerificationRow[] {
  const known = solved.get(topic) ?? [...verificationSteps({ topic })];
  solved.set(topic, known);
  return known;
}

describe.each(verificationTopics)('%s', (topic) => {
  for (const [i, { model, quantity, expected, source, basis }] of verificationCases({ topic }).entries())
    it(`${model}: ${quantity} is ${expected} (${source}; ${basis})`, () => {
      const row = rowsOf(topic)[i];
      const report = `${row.values.join(', ')} against ${expected}: ${(100 * row.deviation).toFixed(4)} %`;
      expect(row.within, report).toBe(true);
      for (const count of row.nodes) expect(count).toBeLessThanOrEqual(MOST_NODES);
    });
});

describe('the verification book', () => {
  const cases = verificationCases();

  it('holds at least 60 cases, each named once, with a source and a reason for its tolerance', () => {
    expect(cases.length).toBeGreaterThanOrEqual(60);
    const names = cases.map(({ topic, model, quantity }) => `${topic}: ${model}: ${quantity}`);
    expect(new Set(names).size).toBe(names.length);
    for (const { source, why, tolerance, basis } of cases) {
      expect(Math.min(source.length, why.length)).toBeGreaterThan(5);
      expect(tolerance).toBeLessThanOrEqual(0.02);
      if (basis === 'memory') expect(tolerance).toBeGreaterThanOrEqual(0.01);
    }
  });

  it('is shared out by models without loss', () => {
    const parts = [0, 1, 2].flatMap((index) => verificationCases({ part: { index, of: 3 } }));
    expect(parts.map(({ index }) => index).sort((a, b) => a - b)).toEqual(cases.map(({ index }) => index));
  });

  it('holds composite sections on the coarsest mesh too: four elements along a rib', () => {
    // A linear in-plane field would over-stiffen ribs by about (e^2 A/I)/n^2 (Gupta and Ma 1977, memory).
    for (const { values, expected, tolerance, model } of rowsOf('composite sections'))
      expect(Math.abs(values[0] / expected - 1), model).toBeLessThan(tolerance);
  });

  it('converges with the order that the elements promise: 2 for deflections of smooth plates', () => {
    const orders = rowsOf('clamped plates')
      .filter(({ quantity, model }) => quantity.startsWith('w') && model.endsWith('uniform'))
      .map(({ order }) => order);
    expect(orders.length).toBe(3);
    for (const order of orders) expect(order).toBeGreaterThan(1.7);
  });
});

const plates = verificationBook.flatMap(({ name, models }) =>
  models
    .filter((model) => model.kind === 'plate')
    .map((model): [string, PlateModel] => [`${name}: ${model.name}`, model]),
);

describe.each(plates)('%s', (_, model) => {
  it('leaves no residual, and reactions balance loads where only supports hold it', () => {
    const { residual, reactions, load } = solvePlate(problemOf(model, 4 * model.size));
    expect(residual).toBeLessThan(1e-12);
    const { supports = [], edges = [], foundations = [] } = model.plate;
    const balance = reactions.reduce((sum, r) => sum + r, 0) + load;
    if (supports.length > 0 && edges.length + foundations.length === 0)
      expect(Math.abs(balance)).toBeLessThan(1e-9 * Math.max(Math.abs(load), 1));
  });
});
