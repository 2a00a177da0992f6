import { checkHeadModel, solveHead } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { fastenerRows, seatRows, siteRows } from '../../src/format/number-rows.ts';
import { sampleHead } from '../state/sample-head.ts';

const { preload: _, ...probes } = sampleHead.sites.probes;
const model = checkHeadModel({
  ...sampleHead,
  sites: { ...sampleHead.sites, probes: { ...probes, preload: 0.1, rate: 0.5 } },
  fasteners: sampleHead.fasteners.map((fastener, i) =>
    i === 0 ? { ...fastener, screw: 'M2.5', stiffness: 'auto', preload: 800 } : fastener,
  ),
});
const [shown] = solveHead(model, { quality: 'live' }).result.cases;

describe('tables of a case', () => {
  it('have as many cells as columns', () => {
    for (const { columns, rows } of [fastenerRows(shown.fasteners), siteRows(shown.sites), seatRows(shown.seats)])
      for (const row of rows) expect(row.length).toBe(columns.length);
  });

  it('say of a joint what the screw carries and what is left, and nothing where there is no preload', () => {
    const [first, second] = fastenerRows(shown.fasteners).rows;
    const { joint, reaction } = shown.fasteners[0];
    expect(Number(first[3])).toBeCloseTo(joint!.screwForce.low, -1);
    // Screw less clamp is the force that holds back, up to what rounding to 1 N leaves.
    expect(Math.abs(Number(first[3]) - Number(first[4]) + reaction)).toBeLessThan(1.01);
    expect(second.slice(3)).toEqual(['\u2013', '\u2013', '\u2013', '\u2013']);
  });

  it('leave joints and contact out where the model has none', () => {
    const [bare] = solveHead(sampleHead, { quality: 'live' }).result.cases;
    expect(fastenerRows(bare.fasteners).columns).toHaveLength(3);
    expect(siteRows(bare.sites).columns).toHaveLength(3);
  });

  it('keep the largest bows of very many sites', () => {
    const many = Array.from({ length: 150 }, (_, i) => ({ ...shown.sites[0], name: `S${i}`, bow: i / 1000 }));
    const { rows } = siteRows(many);
    expect(rows).toHaveLength(100);
    expect(rows[0][0]).toBe('S149');
  });
});
