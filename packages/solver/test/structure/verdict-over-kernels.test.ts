import { afterAll, describe, expect, it } from 'vitest';
import kestrelBoth from '../../../../models/kestrel-both.json';
import { startNodeCrew } from '../../node/crew.ts';
import '../linear-algebra/relaxed-simd.ts';
import { availableKernels } from '../../src/linear-algebra/compiled-kernel.ts';
import type { FactorOptions } from '../../src/linear-algebra/factor.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { solveHead } from '../../src/solve-head.ts';

const model = checkHeadModel(kestrelBoth);
const crew = startNodeCrew(1);

/** Bow of every site in every case, and the verdict's number. */
function numbers(factor: FactorOptions): number[] {
  const { cases, verdict } = solveHead(model, { quality: 'live', factor }).result;
  const sites = cases.flatMap((load) => load.sites.map(({ bow }) => bow));
  return [verdict.criteria[0].value, ...sites];
}

describe('verdict', () => {
  afterAll(() => crew.end());

  it('is the same to 1e-9 with fused, SIMD and plain kernels, on one thread and on two', () => {
    const kernels = availableKernels();
    expect(kernels.map(({ name }) => name)).toEqual(['fused', 'simd', 'plain']);
    const reference = numbers({ kernel: kernels[2] });
    expect(reference[0]).toBeGreaterThan(0.03);
    const scale = reference[0];
    for (const kernel of kernels)
      for (const helpers of [null, crew])
        numbers({ kernel, crew: helpers }).forEach((value, i) => {
          expect(Math.abs(value - reference[i])).toBeLessThan(1e-9 * scale);
        });
  });
});
