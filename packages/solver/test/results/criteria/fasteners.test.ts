import { describe, expect, it } from 'vitest';
import { fasteners, readingsOf } from '../../../src/results/criteria/fasteners.ts';
import type { FastenerResult } from '../../../src/results/head-result.ts';
import type { JointResult } from '../../../src/results/joint.ts';
import { caseOf, judgementOf } from './case-of.ts';

const same = { low: 100, high: 100 };
type Ratios = Pick<JointResult, 'proofRatio' | 'strippingRatio' | 'clampLoss'>;
const jointOf = (ratios: Ratios): JointResult => ({
  ...{ preload: same, share: 0.1, proofLoad: 1, strippingLoad: 1, openStiffness: 1 },
  ...{ screwForce: same, clampLeft: same, opens: false },
  ...ratios,
});
/** Fasteners F1, F2 ... whose joints use these shares; `null` = no preload. */
const read = (...all: (Ratios | null)[]) =>
  fasteners.read(
    caseOf({
      fasteners: all.map(
        (each, i): FastenerResult => ({
          ...{ name: `F${i + 1}`, at: [0, 0], reaction: 0, w: 0, holds: true, stiffness: null, terms: null },
          joint: each && jointOf(each),
        }),
      ),
    }),
  );
const ratios = (proofRatio: number, strippingRatio: number | null, clampLoss: number): Ratios => ({
  proofRatio,
  strippingRatio,
  clampLoss,
});

describe('fasteners as a criterion', () => {
  it('are as bad as the worst of proof, thread and clamp of any of them', () => {
    expect(read(ratios(0.9, 0.5, 0.1), ratios(0.4, 0.5, 0.6))).toEqual({ value: 0.9, site: 'F1', mode: 'proof' });
    expect(read(ratios(0.4, 0.5, 0.1), ratios(0.4, 0.7, 0.6))).toEqual({ value: 0.7, site: 'F2', mode: 'stripping' });
    expect(read(ratios(0.4, 0.5, 0.8), ratios(0.4, 0.7, 0.6))).toEqual({ value: 0.8, site: 'F1', mode: 'clamp' });
    expect(fasteners.limit({ bow: 0.03, fastener: 0.9 })).toBe(0.9);
  });

  it('are judged where they have a preload, and not at all without any', () => {
    expect(read(null, null)).toBeNull();
    expect(read(null, ratios(0.4, null, 0.1))).toEqual({ value: 0.4, site: 'F2', mode: 'proof' });
  });

  it('use nothing of a thread whose strength is not known, and nothing without a preload', () => {
    expect(readingsOf({ name: 'F1', joint: jointOf(ratios(0.4, null, 0.1)) }).map(({ mode }) => mode)).toEqual([
      'proof',
      'clamp',
    ]);
    expect(readingsOf({ name: 'F1', joint: null })).toEqual([]);
  });

  it('give the name of the first within a thousandth of the worst, and the worst value', () => {
    expect(read(ratios(0.1, null, 0), ratios(0.4996, null, 0), ratios(0.5, null, 0))).toEqual({
      value: 0.5,
      site: 'F2',
      mode: 'proof',
    });
    expect(read(ratios(0.1, null, 0), ratios(0.4994, null, 0), ratios(0.5, null, 0))!.site).toBe('F3');
    expect(read(ratios(0, null, 0))).toEqual({ value: 0, site: 'F1', mode: 'proof' });
  });

  it('tell shares in percent, a tenth of one below ten', () => {
    const sentence = (value: number, mode: string) =>
      fasteners.sentence(judgementOf({ value, mode, limit: 0.9, site: 'F2' }));
    expect(sentence(1.1, 'stripping')).toBe(
      'Fastener F2 uses 110 % of what strips its tapped thread in case "mounted", 20 % over the 90 % limit.',
    );
    expect(sentence(0.9, 'proof')).toBe(
      'Fastener F2 uses 90 % of the proof load of its screw in case "mounted", 0.0 % inside the 90 % limit.',
    );
    expect(sentence(0.1, 'clamp')).toMatch(/^Fastener F2 loses 10 % of its clamp force .* 80 % inside/);
    expect(sentence(-0.05, 'clamp')).toMatch(/ loses -5\.0 % of/);
  });
});
