import { readFileSync } from 'node:fs';
import { type HeadModel, readHeadModel, solveHead, type Verdict } from '@flathead/solver';
import { describe, expect, it } from 'vitest';

const model = (name: string): HeadModel =>
  readHeadModel(readFileSync(new URL(`../../models/kestrel-${name}.json`, import.meta.url), 'utf8'));
const verdict = (name: string): Verdict => solveHead(model(name)).result.verdict;

/** The demo heads are invented; their stories must be true as computed. */
describe('Kestrel', () => {
  const baseline = verdict('baseline');
  const moved = verdict('moved-fasteners');
  const ribs = verdict('ribs');
  const both = verdict('both');
  const bow = ({ criteria }: Verdict): number => criteria[0].value;

  it('fails its limit at the baseline, far beyond its numerical error', () => {
    expect(baseline.outcome).toBe('fail');
    expect(bow(baseline) - 10 * baseline.criteria[0].error!).toBeGreaterThan(0.035);
  });

  it('bows less with either cure, and passes with both only', () => {
    expect(bow(moved)).toBeLessThan(bow(baseline));
    expect(bow(ribs)).toBeLessThan(bow(baseline));
    expect(moved.outcome).toBe('fail');
    expect(ribs.outcome).toBe('fail');
    expect(both.outcome).toBe('pass');
    expect(bow(both)).toBeLessThan(Math.min(bow(moved), bow(ribs)));
  });

  it('is worst at a middle site when mounted', () => {
    expect(baseline.criteria[0]).toMatchObject({ case: 'mounted' });
    expect(baseline.criteria[0].site).toMatch(/^[AB]3$/);
  });

  it('is held by screws that pull, and not by one that could only push', () => {
    const head = model('both');
    const holding = (acts: (index: number) => 'pull' | 'push') =>
      solveHead({ ...head, fasteners: head.fasteners.map((fastener, i) => ({ ...fastener, acts: acts(i) })) }).result;
    const pulling = holding(() => 'pull');
    expect(bow(pulling.verdict)).toBe(bow(both));
    expect(pulling.verdict.remarks).toEqual(both.remarks);

    const one = holding((i) => (i === 0 ? 'push' : 'pull'));
    const [{ fasteners, load, reaction }] = one.cases;
    expect(fasteners[0]).toMatchObject({ name: 'NW', reaction: 0, holds: false });
    expect(fasteners[0].w).toBeGreaterThan(0);
    expect(Math.abs(load + reaction)).toBeLessThan(1e-9 * load);
    expect(bow(one.verdict)).toBeGreaterThan(bow(both));
    expect(one.verdict.remarks).toContain('Fastener NW lets go in case "mounted".');
  });

  it('is the same head but for what each variant says', () => {
    const { name, note, frame, fasteners, ...rest } = model('baseline');
    for (const variant of ['moved-fasteners', 'ribs', 'both'])
      expect(model(variant)).toMatchObject({ ...rest, frame: { ...frame } });
  });
});
