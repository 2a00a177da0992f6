import { readFileSync } from 'node:fs';
import { applyPlacement, placementSteps, readHeadModel, solveHead } from '@flathead/solver';
import { expect, it } from 'vitest';
import { insideRing } from '../../packages/solver/src/geometry/inside.ts';
import { shapeRing } from '../../packages/solver/src/geometry/ring.ts';

it('Kestrel fails as it is and passes with its six fasteners placed clear of the connectors', () => {
  const kestrel = readHeadModel(readFileSync('models/kestrel-baseline.json', 'utf8'));
  expect(solveHead(kestrel, { quality: 'live' }).result.verdict.outcome).toBe('fail');
  const steps = placementSteps(kestrel, { mirror: 'both', clearance: 1 });
  let next = steps.next();
  while (!next.done) next = steps.next();
  const { best, verified } = next.value;
  expect(best.placement).toHaveLength(6);
  expect(verified.outcome).toBe('pass');
  // The search and the solver stand on meshes of their own.
  expect(Math.abs(best.bow / verified.bow - 1)).toBeLessThan(0.02);
  const { result } = solveHead(applyPlacement(kestrel, best.placement));
  expect(result.verdict.remarks.filter((remark) => remark.includes('keep-out'))).toEqual([]);
  for (const { shape } of kestrel.keepOuts ?? []) {
    const ring = shapeRing(shape, { chord: 0.01, path: '' });
    for (const { at } of best.placement) expect(insideRing(ring, at[0], at[1])).toBe(false);
  }
  console.log(`Kestrel placed: bow ${(1000 * verified.bow).toFixed(2)} um of ${1000 * kestrel.limits.bow} um allowed.`);
});
