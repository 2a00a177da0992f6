import { checkHeadModel, checkPlacementPlan, type StudyName, studyOf } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { defaultSetup, planOf } from '../../src/studies/plans.ts';
import { sampleHead } from '../state/sample-head.ts';

const studies: readonly StudyName[] = ['placement', 'sweep', 'tolerance', 'sites'];

describe('plans of what is set up', () => {
  it.each(studies)('makes a plan of the defaults of %s that the study takes', (study) => {
    const built = planOf(study, defaultSetup(study, sampleHead), sampleHead);
    if (!built.ok) throw new Error(JSON.stringify(built.trouble));
    if (study === 'placement') expect(checkPlacementPlan(built.plan)).toEqual(built.plan);
    else expect(studyOf(study, sampleHead, built.plan).total).toBeGreaterThan(1);
  });

  it('asks for the part that screws go through only of a head with a frame', () => {
    const setup = { ...defaultSetup('placement', sampleHead), edge: '1.5' };
    const frame = {
      outer: { rectangle: [80, 80] },
      window: { rectangle: [20, 20] },
      material: 'stainless-304',
      thickness: 3,
    };
    const framed = checkHeadModel({ ...sampleHead, frame: { ...frame, side: 'board', join: 'sliding' } });
    const planned = (through: string, model = framed) => planOf('placement', { ...setup, through }, model);
    expect(planned('body')).toMatchObject({ ok: true, plan: { through: 'body', edge: 1.5 } });
    for (const built of [planned('auto'), planned('body', sampleHead)]) {
      expect(built).toMatchObject({ ok: true, plan: { edge: 1.5 } });
      expect(built).not.toHaveProperty('plan.through');
    }
  });

  it('reads numbers as an engineer types them and says what is wrong beside each', () => {
    const setup = { ...defaultSetup('sweep', sampleHead), from: '3,5', to: '0.2 in', count: '1' };
    const built = planOf('sweep', setup, sampleHead);
    expect(built).toEqual({ ok: false, trouble: { count: '1 is out of range; expected 2 to 200.' } });
    expect(planOf('sweep', { ...setup, count: '4' }, sampleHead)).toEqual({
      ok: true,
      plan: { vary: [{ name: 'Body thickness', path: 'body.thickness', values: { from: 3.5, to: 5.08, count: 4 } }] },
    });
  });

  it('varies only what may be off, and refuses when nothing may', () => {
    const exact = { ...defaultSetup('tolerance', sampleHead), young: '', preload: '0', place: '' };
    const built = planOf('tolerance', exact, sampleHead);
    expect(built).toMatchObject({ ok: true, plan: { vary: [{ path: 'body.thickness' }] } });
    expect(planOf('tolerance', { ...exact, thickness: '' }, sampleHead)).toMatchObject({
      ok: false,
      trouble: { thickness: expect.stringContaining('Nothing scatters') },
    });
  });

  it('compares even numbers of fasteners where they are mirrored, and no pattern whose fields overlap', () => {
    const both = planOf('placement', { ...defaultSetup('placement', sampleHead), curve: 'count' }, sampleHead);
    expect(both).toMatchObject({ plan: { curve: { over: 'count', values: [4, 6, 8, 10, 12] } } });
    const dies = checkHeadModel({
      ...sampleHead,
      sites: { ...sampleHead.sites, pitch: undefined, die: [5, 7], skip: [1, 1] },
    });
    // Fields are 6 mm wide: dies of 5 mm do not hold them side by side.
    expect(planOf('sites', defaultSetup('sites', dies), dies)).toMatchObject({
      plan: { patterns: [{ skip: [1, 1] }, { skip: [2, 1] }, { skip: [3, 1] }] },
    });
  });
});
