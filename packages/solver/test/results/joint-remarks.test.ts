import { describe, expect, it } from 'vitest';
import type { FastenerResult } from '../../src/results/head-result.ts';
import type { JointResult } from '../../src/results/joint.ts';
import { jointRemarks } from '../../src/results/joint-remarks.ts';
import { caseOf } from './criteria/case-of.ts';

const even = { low: 100, high: 100 };
const sound: JointResult = {
  ...{ preload: even, share: 0.1, proofLoad: 1, strippingLoad: 1, openStiffness: 5000, clampLoss: 0.1 },
  ...{ screwForce: even, clampLeft: even, opens: false, proofRatio: 0.5, strippingRatio: 0.5 },
};
/** Remarks on fasteners A, B ... with these joints. */
const remarks = (joints: (Partial<JointResult> | null)[], limits = {}) => {
  const fasteners = joints.map(
    (joint, i): FastenerResult => ({
      ...{ name: 'ABCDEFG'[i], at: [0, 0], reaction: 0, w: 0, holds: true, stiffness: 40_000, terms: null },
      joint: joint && { ...sound, ...joint },
    }),
  );
  return jointRemarks({ bow: 1, ...limits }, [caseOf({ name: 'soak', fasteners })]);
};

describe('remarks on preloaded joints', () => {
  it('say nothing of joints that hold, up to proof load and stripping load themselves', () => {
    expect(remarks([{}, null, { proofRatio: 1, strippingRatio: 1 }, { strippingRatio: null }])).toEqual([]);
  });

  it('name those that are loaded beyond, by what gives way', () => {
    expect(remarks([{ proofRatio: 1.01 }, {}, { strippingRatio: 1.01 }, { proofRatio: 2, strippingRatio: 2 }])).toEqual(
      [
        'Fasteners A, D are loaded beyond the proof load in case "soak": the screw stretches for good.',
        'Fasteners C, D are loaded beyond what the tapped thread bears in case "soak": it may strip.',
      ],
    );
    expect(remarks([{ proofRatio: 1.01 }])[0]).toMatch(/^Fastener A is loaded/);
  });

  it('say of one that opens how stiff it is before and after', () => {
    expect(remarks([{}, { opens: true }])).toEqual([
      expect.stringMatching(/^The joint of fastener B opens in case "soak".* 5000 N\/mm instead of 40000 N\/mm/),
    ]);
  });

  it('say what is not judged, where fasteners are', () => {
    expect(remarks([null, { strippingRatio: null }, {}], { fastener: 0.9 })).toEqual([
      'Fastener A is not judged: no preload is given.',
      expect.stringMatching(/^Fastener B is not judged for stripping: give "into"/),
    ]);
  });
});
