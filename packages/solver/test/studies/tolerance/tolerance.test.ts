import { describe, expect, it } from 'vitest';
import type { TolerancePlan } from '../../../src/studies/tolerance/plan.ts';
import { toleranceSteps, toleranceStudy } from '../../../src/studies/tolerance/tolerance.ts';
import { faultOf } from '../../model/fault-of.ts';
import { thinHead } from '../small-head.ts';

function run(plan: TolerancePlan) {
  const steps = toleranceSteps(thinHead, plan);
  const rows = [];
  for (let next = steps.next(); ; next = steps.next()) {
    if (next.done) return { rows, summary: next.value };
    rows.push(next.value);
  }
}

/** Correlation of two columns. */
function correlation(pairs: readonly (readonly [number, number])[]): number {
  const mean = (k: 0 | 1) => pairs.reduce((sum, pair) => sum + pair[k], 0) / pairs.length;
  const [a, b] = [mean(0), mean(1)];
  const sum = (f: (x: number, y: number) => number) => pairs.reduce((s, [x, y]) => s + f(x - a, y - b), 0);
  return sum((x, y) => x * y) / Math.sqrt(sum((x) => x * x) * sum((_, y) => y * y));
}

const preload: TolerancePlan = {
  vary: [{ path: 'sites.probes.preload', distribution: { normal: { mean: 0.05, sigma: 0.002 } } }],
  samples: 256,
  seed: 7,
};

describe('a tolerance study', () => {
  const { rows, summary } = run(preload);
  const [bow] = summary.figures;

  it('scatters the bow as the preload that it is proportional to', () => {
    expect(bow.sigma / bow.mean).toBeCloseTo(0.002 / 0.05, 3);
    for (const { settings, figures } of rows)
      expect(figures!.bow.value / Number(settings[0])).toBeCloseTo(bow.mean / 0.05, 3);
  });

  it('has the Cpu of its heads by hand, (U - mean) / 3 sigma', () => {
    const values = rows.map(({ figures }) => figures!.bow.value);
    const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
    const sigma = Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (values.length - 1));
    expect(bow.capability!.value).toBeCloseTo((0.01 - mean) / (3 * sigma), 7);
  });

  it('says how many fail: bows above the limit, in every head', () => {
    const middle = rows.map(({ figures }) => figures!.bow.value).sort((a, b) => a - b)[127];
    const tight = { ...thinHead, limits: { bow: middle * (1 + 1e-7) } };
    const study = toleranceStudy(tight, preload);
    const { figures, failing } = study.summary([...study.rows(Array.from({ length: study.total }, (_, i) => i))]);
    expect(failing.count).toBe(128);
    expect(figures[0].failing.value).toBe(0.5);
    expect(failing.low!).toBeLessThan(0.5);
    expect(failing.high!).toBeGreaterThan(0.5);
  });

  it('gives the same bytes for the same seed and others for another', () => {
    const text = (plan: TolerancePlan) => JSON.stringify(run({ ...plan, samples: 8 }));
    for (const sampling of ['sobol', 'random'] as const) {
      expect(text({ ...preload, sampling })).toBe(text({ ...preload, sampling }));
      expect(text({ ...preload, sampling, seed: 8 })).not.toBe(text({ ...preload, sampling }));
    }
  });

  it('gives every row the same digits alone', () => {
    const study = toleranceStudy(thinHead, { ...preload, vary: [...preload.vary, moved] });
    const all = [...study.rows([0, 1, 2, 3, 4, 5])];
    for (const row of all.toReversed()) expect([...study.rows([row.index])]).toEqual([row]);
  });
});

const moved: TolerancePlan['vary'][number] = {
  path: 'fasteners[*].at[0]',
  name: 'x of fasteners',
  as: 'offset',
  distribution: { uniform: [-0.1, 0.1] },
  lot: 0,
};

describe('what scatters together', () => {
  const thickness: TolerancePlan['vary'][number] = {
    path: 'body.thickness',
    distribution: { normal: { mean: 4, tolerance: 0.3 } },
  };

  it('has the correlation asked for, of normal scores', () => {
    const correlations = [{ between: ['body.thickness', 'sites.probes.preload'] as [string, string], rho: 0.6 }];
    const study = toleranceStudy(thinHead, { ...preload, vary: [thickness, ...preload.vary], correlations });
    const rows = [...study.rows(Array.from({ length: 256 }, (_, i) => i))];
    const pairs = rows.map(({ settings }) => [Number(settings[0]), Number(settings[1])] as const);
    expect(correlation(pairs)).toBeCloseTo(0.6, 1);
  });

  it('shares the part of its variance that is that of the lot', () => {
    const lot = { ...moved, distribution: { normal: { mean: 0, sigma: 0.02 } }, lot: 0.75 };
    const study = toleranceStudy(thinHead, { vary: [lot], samples: 256, seed: 3 });
    const rows = [...study.rows(Array.from({ length: 256 }, (_, i) => i))];
    const pairs = rows.map(({ settings }) => settings[0] as number[]).map(([a, , , d]) => [a, d] as const);
    expect(correlation(pairs)).toBeCloseTo(0.75, 1);
    // One cause for the lot, one for the four within it.
    const causes = toleranceStudy(thinHead, { vary: [lot], samples: 4, seed: 3, indices: true });
    expect(causes.total).toBe(4 * (2 + 2));
  });

  it('is refused when it contradicts itself or what indices need', () => {
    const names = ['a', 'b', 'c'];
    const vary = ['body.thickness', 'sites.probes.preload', 'fasteners[NW].at[0]'].map((path, i) => ({
      path,
      name: names[i],
      distribution: { uniform: [0.9, 1.1] as [number, number] },
      as: 'factor' as const,
    }));
    const rhos = [0.9, 0.9, -0.9];
    const correlations = rhos.map((rho, i) => ({ between: [names[i], names[(i + 1) % 3]] as [string, string], rho }));
    const plan: TolerancePlan = { vary, samples: 4, seed: 1, correlations };
    expect(faultOf(() => toleranceStudy(thinHead, plan)).message).toContain('contradict each other');
    const fine = { ...plan, correlations: correlations.slice(0, 1) };
    expect(faultOf(() => toleranceStudy(thinHead, { ...fine, indices: true })).message).toContain(
      'independent of each other',
    );
    const unknown = { ...plan, correlations: [{ between: ['a', 'd'] as [string, string], rho: 0.1 }] };
    expect(faultOf(() => toleranceStudy(thinHead, unknown)).message).toContain('a, b, c');
  });
});
