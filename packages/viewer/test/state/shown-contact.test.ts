import { checkHeadModel, solveHead } from '@flathead/solver';
import { expect, it } from 'vitest';
import { leastContact, shownContact } from '../../src/state/shown-contact.ts';
import { sampleHead } from './sample-head.ts';

const model = checkHeadModel({
  ...sampleHead,
  sites: { ...sampleHead.sites, probes: { ...sampleHead.sites.probes, rate: 0.5, touchdown: 0.2 } },
  cases: [{ name: 'mounted' }, { name: 'one', touched: ['A1'] }],
  limits: { ...sampleHead.limits, contactForce: 0.04 },
});
const { result } = solveHead(model, { quality: 'live' });
const solved = { model, result, quality: 'live' } as const;

it('shows rate times deflection as lost, of what may be lost down to the limit', () => {
  const [mounted] = result.cases;
  const contact = shownContact(solved, mounted)!;
  expect(contact.allowed).toBeCloseTo(0.06, 12);
  expect(contact.preload).toBe(0.1);
  const { x, y } = result.mesh;
  // Nodes of the field of A1: what is left of the preload there is nowhere below what the solver reports as least.
  const field = [...x.keys()].filter((v) => Math.abs(x[v] + 7) <= 3 && Math.abs(y[v] - 6) <= 3);
  expect(field.length).toBeGreaterThan(3);
  for (const v of field) expect(contact.lost[v]).toBeCloseTo(0.5 * mounted.w[v], 15);
  const left = Math.min(...field.map((v) => 0.1 - contact.lost[v]));
  expect(left).toBeCloseTo(contact.left.get('A1')!, 4);
  expect(contact.left.get('A1')).toBe(mounted.sites[0].contact?.board?.minimum);
});

it('counts nothing as lost where a floating site is touched, nor without a rate', () => {
  const one = result.cases[1];
  const { lost } = shownContact(solved, one)!;
  const { x, y } = result.mesh;
  const within = (cx: number) => [...x.keys()].filter((v) => Math.abs(x[v] - cx) <= 3 && Math.abs(y[v] - 6) <= 3);
  for (const v of within(-7)) expect(lost[v]).toBe(0);
  expect(within(7).some((v) => lost[v] > 0)).toBe(true);
  const { rate: _, ...probes } = model.sites.probes;
  const rateless = { ...solved, model: { ...model, sites: { ...model.sites, probes } } };
  expect(shownContact(rateless, one)).toBeNull();
});

it('has no limit where the model asks for no contact force', () => {
  const { contactForce: _, ...limits } = model.limits;
  expect(shownContact({ ...solved, model: { ...model, limits } }, result.cases[0])!.allowed).toBeNull();
});

it('names the first site that shares the least force, and none where no force is known', () => {
  const of = (left: readonly (readonly [string, number | null])[]) => leastContact({ left: new Map(left) });
  expect(
    of([
      ['A1', 0.06],
      ['A3', 0.04990001],
      ['B3', 0.0499],
      ['B4', null],
    ]),
  ).toBe('A3');
  expect(
    of([
      ['A1', 0],
      ['A2', 0],
    ]),
  ).toBe('A1');
  expect(of([['A1', null]])).toBeNull();
});
