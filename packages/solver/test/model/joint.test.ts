import { describe, expect, it } from 'vitest';
import { compileHead } from '../../src/model/compile.ts';
import type { HeadModel } from '../../src/model/head-model.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { faultOf } from './fault-of.ts';
import { altered, twoByTwo } from './two-by-two.ts';

/** Compiles two by two with further fields for its first fastener, an M2.5. */
const compile = (fields: object, changes: Readonly<Record<string, unknown>> = {}) =>
  compileHead(checkHeadModel(altered(twoByTwo, { 'fasteners.0': { ...twoByTwo.fasteners[0], ...fields }, ...changes })))
    .fasteners[0];
const jointWith = (fields: object, changes?: Readonly<Record<string, unknown>>) => compile(fields, changes).joint!;

describe('a preloaded joint', () => {
  it('has the preload of its torque, T = 0.2 F d, give or take 30 %', () => {
    // 300 / (0.2 * 2.5) = 600 N; 300 / (0.15 * 2.5) = 800 N.
    const expectRange = (fields: object, low: number, high: number) => {
      const { preload } = jointWith(fields);
      expect(preload.low).toBeCloseTo(low, 9);
      expect(preload.high).toBeCloseTo(high, 9);
    };
    expectRange({ torque: 300 }, 420, 780);
    expectRange({ torque: 300, torqueFactor: 0.15, scatter: 0.25 }, 600, 1000);
    expectRange({ preload: 500 }, 500, 500);
    expectRange({ preload: 500, scatter: 0.1 }, 450, 550);
  });

  it('bears the proof load of its grade: stress area times proof stress (ISO 898-1, ISO 3506-1)', () => {
    // M2.5: 3.39 mm2.
    expect(jointWith({ preload: 500 }).proofLoad).toBeCloseTo(1525.5, 6);
    expect(jointWith({ preload: 500, grade: '12.9' }).proofLoad).toBeCloseTo(3288.3, 6);
    expect(jointWith({ preload: 500, grade: 'A4-50' }).proofLoad).toBeCloseTo(711.9, 6);
  });

  it('shears its tapped thread off at strength / sqrt(3) on 7/8 of the cylinder over the crests', () => {
    // 0.875 pi * 2.5 * 4 = 27.489 mm2; at 300 / sqrt(3) = 173.205 MPa: 4761.2 N. One diameter is 2.5 / 4 of it.
    const materials = { brass: { E: 100_000, nu: 0.34, strength: 300 }, 'tool-steel': { E: 207_000, nu: 0.29 } };
    expect(jointWith({ preload: 500, into: 'brass', engagement: 4 }, { materials }).strippingLoad).toBeCloseTo(4761, 0);
    expect(jointWith({ preload: 500, into: 'brass' }, { materials }).strippingLoad).toBeCloseTo((4761.2 * 2.5) / 4, 0);
    // A preset has the strength of its softest usual condition; a material of the same name in the model does not.
    expect(jointWith({ preload: 500, into: 'stainless-304' }).strippingLoad).toBeCloseTo(
      (4761.2 * 2.5 * 190) / 4 / 300,
      0,
    );
    expect(jointWith({ preload: 500, into: 'tool-steel' }, { materials }).strippingLoad).toBeNull();
    expect(jointWith({ preload: 500 }).strippingLoad).toBeNull();
  });

  it('shares a working load as its compliances say, also where the model gives the stiffness', () => {
    const { terms, joint } = compile({ preload: 500, into: 'aluminium-6061', engagement: 4 });
    const { clamped, screw, seat } = terms!;
    expect(joint!.share).toBeCloseTo(screw / (screw + clamped), 12);
    expect(joint!.openStiffness).toBeCloseTo((screw * seat) / (screw + seat), 6);
    const given = compile({ preload: 500, into: 'aluminium-6061', engagement: 4, stiffness: 'rigid' });
    expect(given).toMatchObject({ stiffness: null, terms: null, joint });
  });

  it('is softer in aluminium than in steel, and stays as it was where the model says nothing of it', () => {
    const plain = compile({}).stiffness!;
    expect(compile({ preload: 500, grade: '8.8' }).stiffness).toBe(plain);
    expect(compile({ into: 'tool-steel' }).stiffness!).toBeGreaterThan(plain);
    expect(compile({ into: 'aluminium-6061' }).stiffness!).toBeLessThan(plain);
    expect(compile({ engagement: 2 }).stiffness!).toBeLessThan(plain);
    expect(compile({}).joint).toBeNull();
  });
});

describe('a fastener is refused', () => {
  const bare = { screw: undefined, bearing: 4, stiffness: 5e5 };
  it.each([
    ['with a grade but no screw', { ...bare, grade: '8.8' }, 'SCHEMA', 'screw', /has "grade" but no screw/],
    ['with a torque but no screw', { ...bare, torque: 300 }, 'SCHEMA', 'screw', /has "torque" but no screw/],
    ['with preload and torque', { preload: 500, torque: 300 }, 'SCHEMA', 'torque', /both a preload and a torque/],
    ['with a factor of no torque', { preload: 500, torqueFactor: 0.2 }, 'SCHEMA', 'torqueFactor', /no torque/],
    ['with a scatter of nothing', { scatter: 0.2 }, 'SCHEMA', 'scatter', /no preload/],
    ['preloaded but acting one way', { preload: 500, acts: 'pull' }, 'SCHEMA', 'acts', /holds both ways/],
    ['engaged by less than a pitch', { engagement: 0.4 }, 'OUT_OF_RANGE', 'engagement', /0.45 mm or more/],
    ['tapped into ceramic', { into: 'alumina-96' }, 'SCHEMA', 'into', /bears no thread/],
    ['tapped into nothing known', { into: 'stainles-304' }, 'UNKNOWN_MATERIAL', 'into', /Did you mean "stainless-304"/],
    ['of an unknown grade', { grade: '9.9' }, 'SCHEMA', 'grade', /8.8/],
    ['with a preload of nothing', { preload: 0 }, 'OUT_OF_RANGE', 'preload', /is 0/],
    ['with a scatter beyond 0.9', { preload: 500, scatter: 1 }, 'OUT_OF_RANGE', 'scatter', /is 1/],
    ['with a torque factor of 2', { torque: 300, torqueFactor: 2 }, 'OUT_OF_RANGE', 'torqueFactor', /is 2/],
  ])('%s', (_, fields, code, key, message) => {
    const fault = faultOf(() => compile(fields));
    expect({ code: fault.code, path: fault.path }).toEqual({ code, path: `fasteners.0.${key}` });
    expect(fault.message).toMatch(message);
  });

  it('when it is to be judged and no fastener has a preload', () => {
    const fault = faultOf(() => compileHead(altered(twoByTwo, { 'limits.fastener': 0.9 }) as HeadModel));
    expect({ code: fault.code, path: fault.path }).toEqual({ code: 'SCHEMA', path: 'limits.fastener' });
    expect(fault.message).toMatch(/none has a preload/);
  });
});
