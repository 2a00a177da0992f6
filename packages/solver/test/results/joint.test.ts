import { describe, expect, it } from 'vitest';
import type { HeadModel } from '../../src/model/head-model.ts';
import type { Joint } from '../../src/model/joint.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { jointUnder } from '../../src/results/joint.ts';
import { solveHead } from '../../src/solve-head.ts';
import { altered, twoByTwo } from '../model/two-by-two.ts';

const joint: Joint = {
  preload: { low: 400, high: 600 },
  share: 0.1,
  proofLoad: 1000,
  strippingLoad: 2000,
  openStiffness: 9e4,
};

describe('jointUnder', () => {
  it('has screw and parts share a pull of 200 N as 20 and 180', () => {
    expect(jointUnder(joint, -200)).toEqual({
      ...joint,
      screwForce: { low: 420, high: 620 },
      clampLeft: { low: 220, high: 420 },
      proofRatio: 0.62,
      strippingRatio: 0.31,
      clampLoss: 1 - 220 / 400,
      opens: false,
    });
  });

  it('opens where (1 - share) times the pull exceeds the preload: the screw then has all of it', () => {
    // 400 / 0.9 = 444.4 N
    expect(jointUnder(joint, -444.4)).toMatchObject({ opens: false });
    expect(jointUnder(joint, -444.5)).toMatchObject({ opens: true, clampLoss: 1 });
    const open = jointUnder(joint, -500);
    expect(open.screwForce).toEqual({ low: 500, high: 650 });
    expect(open.clampLeft).toEqual({ low: 0, high: 150 });
    // Beyond the high end too, when 0.9 times the pull exceeds 600 N.
    expect(jointUnder(joint, -700).screwForce).toEqual({ low: 700, high: 700 });
  });

  it('goes slack where the head is pressed on harder than the screw can shrink', () => {
    // 400 / 0.1 = 4000 N
    expect(jointUnder(joint, 1000)).toMatchObject({ screwForce: { low: 300 }, clampLeft: { low: 1300 } });
    const slack = jointUnder(joint, 5000);
    expect(slack.screwForce.low).toBe(0);
    expect(slack.clampLeft.low).toBe(5000);
    expect(slack.opens).toBe(false);
    expect(slack.clampLoss).toBeLessThan(0);
  });

  it('balances: screw less clamp is the pull, whatever the state', () => {
    for (let pull = -8000; pull <= 8000; pull += 37) {
      const { screwForce, clampLeft } = jointUnder(joint, -pull);
      for (const end of ['low', 'high'] as const) expect(screwForce[end] - clampLeft[end]).toBeCloseTo(pull, 9);
    }
  });

  it('says nothing of a thread whose strength is not known', () => {
    expect(jointUnder({ ...joint, strippingLoad: null }, -200).strippingRatio).toBeNull();
  });
});

/** Two by two with fields for all of its fasteners. */
const head = (fields: object, changes: Readonly<Record<string, unknown>> = {}) =>
  checkHeadModel(
    altered(twoByTwo, { fasteners: twoByTwo.fasteners.map((each) => ({ ...each, ...fields })), ...changes }),
  );
const judged = (model: HeadModel) => {
  const { verdict, cases } = solveHead(model, { quality: 'live' }).result;
  return { verdict, cases, fasteners: verdict.criteria.find(({ criterion }) => criterion === 'fasteners') };
};

describe('fasteners as a criterion', () => {
  const strong = { into: 'tool-steel', engagement: 5 };

  it('are judged only when asked for', () => {
    expect(judged(head({ preload: 500 })).fasteners).toBeUndefined();
    expect(judged(head({ preload: 500 }, { 'limits.fastener': 0.9 })).fasteners).toMatchObject({
      unit: '1',
      bound: 'most',
      limit: 0.9,
    });
  });

  it('are as bad as the worst of proof, thread and clamp, and say which in words', () => {
    // M2.5 A2-70: 1400 N of 1525.5 N and no more than 9 N of pull beside.
    const proof = judged(head({ ...strong, preload: 1400 }, { 'limits.fastener': 0.9, 'limits.bow': 1 }));
    expect(proof.fasteners).toMatchObject({ outcome: 'fail', mode: 'proof', site: 'F1', case: 'mounted' });
    expect(proof.fasteners!.value).toBeGreaterThan(1400 / 1525.5);
    expect(proof.fasteners!.value).toBeLessThan(1409 / 1525.5);
    expect(proof.verdict.sentence).toMatch(
      /^Fastener F1 uses 92 % of the proof load of its screw in case "mounted", 1\.8 % over the 90 % limit\.$/,
    );

    // 0.875 pi * 2.5 * 2 = 13.74 mm2 of brass at 100 / sqrt(3): 793.6 N.
    const weak = { into: 'soft', engagement: 2, preload: 700 };
    const materials = { soft: { E: 90_000, nu: 0.3, strength: 100 } };
    const thread = judged(head(weak, { materials, 'limits.fastener': 0.9, 'limits.bow': 1 }));
    expect(thread.fasteners).toMatchObject({ outcome: 'pass', mode: 'stripping' });
    expect(thread.fasteners!.value).toBeGreaterThan(700 / 793.6);
    expect(thread.fasteners!.value).toBeLessThan(709 / 793.6);
    expect(thread.verdict.sentence).toMatch(/^Fastener F1 uses 88 % of what strips its tapped thread in case/);

    const clamp = judged(head({ ...strong, preload: 20 }, { 'limits.fastener': 0.3, 'limits.bow': 1 }));
    expect(clamp.fasteners).toMatchObject({ outcome: 'fail', mode: 'clamp' });
    const [{ joint: lost, reaction }] = clamp.cases[0].fasteners;
    expect(clamp.fasteners!.value).toBeCloseTo((-(1 - lost!.share) * reaction) / 20, 3);
    expect(clamp.verdict.sentence).toMatch(/^Fastener F1 loses \d+ % of its clamp force in case "mounted"/);
  });

  it('take the high end of the preload for proof and thread, the low end for clamp', () => {
    const { cases } = judged(head({ ...strong, torque: 300 }));
    const { joint, reaction } = cases[0].fasteners[0];
    expect(joint!.proofRatio).toBeCloseTo((780 - joint!.share * reaction) / 1525.5, 9);
    expect(joint!.clampLoss).toBeCloseTo((-(1 - joint!.share) * reaction) / 420, 9);
  });

  it('are remarked on when a joint opens, with the stiffness that is left', () => {
    const { verdict, cases } = judged(head({ ...strong, preload: 5 }));
    const { joint, stiffness } = cases[0].fasteners[0];
    expect(joint!.opens).toBe(true);
    expect(stiffness! / joint!.openStiffness).toBeGreaterThan(3);
    expect(verdict.remarks).toContainEqual(
      `The joint of fastener F1 opens in case "mounted" at the low end of its preload. From then on the screw alone holds, ${joint!.openStiffness.toFixed(0)} N/mm instead of ${stiffness!.toFixed(0)} N/mm: the bow and reactions given are those of the closed joint, and the true bow is larger.`,
    );
    // Not iterated: the bow is that of the closed joint.
    expect(cases[0].bow.value).toBe(judged(head(strong)).cases[0].bow.value);
  });

  it('are remarked on when stretched or stripped, and when they could not be judged', () => {
    const beyond = judged(head({ into: 'aluminium-6061', engagement: 2, preload: 2500 })).verdict.remarks;
    expect(beyond).toContainEqual(expect.stringMatching(/^Fasteners F1, F2, F3, F4 are loaded beyond the proof load/));
    expect(beyond).toContainEqual(expect.stringMatching(/are loaded beyond what the tapped thread bears .* may strip/));
    const partly = altered(twoByTwo, { 'fasteners.2.preload': 500, 'limits.fastener': 0.9 });
    const { remarks } = judged(checkHeadModel(partly)).verdict;
    expect(remarks).toContainEqual('Fasteners F1, F2, F4 are not judged: no preload is given.');
    expect(remarks).toContainEqual(expect.stringMatching(/^Fastener F3 is not judged for stripping: give "into"/));
  });
});
