import { checkHeadModel, type HeadModel, sitePitch, solveHead } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { createDraftStore, hasDrafts, keepDraft } from '../../src/state/draft-store.ts';
import { createHeadStore } from '../../src/state/head-store.ts';
import { createHistory } from '../../src/state/history.ts';
import { propose } from '../../src/state/propose.ts';
import {
  gapRibIndex,
  withCounterbore,
  withFastenersLike,
  withFrame,
  withGapRibs,
  withHoles,
  withNewCase,
  withNewFastener,
  withNewSeat,
  withoutSeat,
  withPitchInstead,
  withRelaxing,
  withSeatForm,
  withSeatStiffness,
  withTolerance,
} from '../../src/state/recipe-edits.ts';
import { valueAt, withValue } from '../../src/state/set-value.ts';
import { undo } from '../../src/state/undo.ts';
import { sampleHead } from './sample-head.ts';

describe('withValue', () => {
  it('replaces one value and shares the rest', () => {
    const next = withValue(sampleHead, 'fasteners.2.at.0', -20);
    expect(valueAt(next, 'fasteners.2.at')).toEqual([-20, -15]);
    expect(valueAt(next, 'fasteners.1')).toBe(sampleHead.fasteners[1]);
    expect(sampleHead.fasteners[2].at).toEqual([-25, -15]);
  });

  it('removes a key by undefined and makes what is missing on the way', () => {
    expect(withValue({ a: { b: 1, c: 2 } }, 'a.b', undefined)).toEqual({ a: { c: 2 } });
    expect(withValue({}, 'a.b', 3)).toEqual({ a: { b: 3 } });
  });
});

describe('propose', () => {
  it('takes what is right by the schema', () => {
    expect(propose(sampleHead, 'body.thickness', 7.5)).toMatchObject({ ok: true, model: { body: { thickness: 7.5 } } });
  });

  it.each([
    ['body.thickness', -3, /^Is -3; expected 0\.001 or more/],
    ['body.thickness', 1e300, /^Is 1e\+300; expected 1000 or less/],
    ['sites.columns', 2.5, /^Is 2\.5; expected a whole number/],
    ['body.thickness', undefined, /^Is missing/],
    ['name', '', /^Has 0 characters/],
  ])('says beside the field what is wrong with %s = %s', (path, value, message) => {
    const proposal = propose(sampleHead, path, value);
    expect(proposal.ok ? 'taken' : proposal.message).toMatch(message);
  });
});

describe('undo', () => {
  it('first takes back text that never reached the model', () => {
    const head = createHeadStore(sampleHead);
    const history = createHistory(head);
    const drafts = createDraftStore();
    history.edit((model) => ({ ...model, name: 'renamed' }));
    keepDraft(drafts, 'body.thickness', { text: '-3', message: 'Is -3', over: 4, begun: false });
    expect(hasDrafts(drafts.getState(), head.getState().model)).toBe(true);
    undo({ head, history, drafts });
    expect(hasDrafts(drafts.getState(), head.getState().model)).toBe(false);
    expect(head.getState().model.name).toBe('renamed');
    undo({ head, history, drafts });
    expect(head.getState().model).toBe(sampleHead);
  });

  it('is not held up by a draft whose field has another value by now', () => {
    const drafts = createDraftStore();
    keepDraft(drafts, 'body.thickness', { text: '-3', message: 'Is -3', over: 5, begun: false });
    expect(hasDrafts(drafts.getState(), sampleHead)).toBe(false);
  });
});

describe('edits of the recipe', () => {
  it('stay right by the schema', () => {
    const framed = withFrame(sampleHead, true);
    const ribbed = withGapRibs(withGapRibs(framed, 'columns', true), 'rows', true);
    for (const model of [framed, ribbed, withNewFastener(sampleHead), withNewCase(sampleHead)])
      expect(checkHeadModel(model)).toEqual(model);
    expect([gapRibIndex(ribbed.frame, 'columns'), gapRibIndex(ribbed.frame, 'rows')]).toEqual([0, 1]);
    expect(withGapRibs(withGapRibs(ribbed, 'rows', false), 'columns', false)).toEqual(framed);
    expect(withFrame(framed, false)).toEqual(sampleHead);
  });

  it('keep the sites where they are when given by pitch instead, and back', () => {
    const byDie = withPitchInstead(sampleHead, false);
    expect(checkHeadModel(byDie)).toEqual(byDie);
    expect(sitePitch(byDie.sites)).toEqual([14, 12]);
    expect(sitePitch(withPitchInstead(byDie, true).sites)).toEqual([14, 12]);
  });

  it('drill the fields with an array that has room for every probe, or fill them again', () => {
    const drilled = withHoles(sampleHead, true);
    expect(checkHeadModel(drilled)).toEqual(drilled);
    const { holes, count, field } = drilled.sites.probes;
    expect(count * holes!.pitch ** 2).toBeLessThanOrEqual(field[0] * field[1]);
    expect(holes!.diameter / holes!.pitch).toBeCloseTo(0.6, 1);
    expect(solveHead(drilled).result.verdict.criteria[0].value).toBeGreaterThan(
      solveHead(withHoles(sampleHead, false)).result.verdict.criteria[0].value,
    );
    expect(withHoles(drilled, false).sites.probes.holes).toBeUndefined();
  });

  it('counterbores the holes it has, softer on the same head, and makes them straight again', () => {
    expect(withCounterbore(sampleHead, true)).toBe(sampleHead);
    const drilled = withHoles(sampleHead, true);
    const stepped = withCounterbore(drilled, true);
    const bow = (model: HeadModel) => solveHead(model, { quality: 'live' }).result.verdict.criteria[0].value;
    expect(bow(stepped)).toBeGreaterThan(bow(drilled));
    expect(withCounterbore(stepped, false)).toEqual(drilled);
  });

  it('refines the mesh to an error, or leaves it as usual', () => {
    const refined = withTolerance(sampleHead, true);
    expect(checkHeadModel(refined).mesh).toEqual({ tolerance: 0.01 });
    expect(withTolerance(refined, false).mesh).toBeUndefined();
  });

  it('put a new fastener under a free name at a free place', () => {
    const { fasteners } = withNewFastener(withNewFastener(sampleHead));
    expect(new Set(fasteners.map(({ name }) => name)).size).toBe(8);
    expect(new Set(fasteners.map(({ at }) => at.join())).size).toBe(8);
  });
});

describe('seats', () => {
  it('are added where the solver takes them, reshaped in place, and removed without a trace', () => {
    const one = withNewSeat(sampleHead);
    expect(() => solveHead(checkHeadModel(one), { quality: 'live' })).not.toThrow();
    const two = withNewSeat(one);
    expect(two.seats?.map(({ name }) => name)).toEqual(['S1', 'S2']);
    const square = checkHeadModel(withSeatForm(one, 0, 'rectangle'));
    const [seat] = one.seats!;
    expect(square.seats).toMatchObject([
      { name: 'S1', shape: { rectangle: [4, 4], centre: 'at' in seat ? seat.at : null }, modulus: seat.modulus },
    ]);
    expect(withSeatForm(square, 0, 'round').seats).toEqual(one.seats);
    expect(withoutSeat(one, 0)).toEqual(sampleHead);
  });

  it('are as stiff as each mm2 of them, or as a whole', () => {
    const [seat] = checkHeadModel(withSeatStiffness(withNewSeat(sampleHead), 0, 'stiffness')).seats!;
    expect(seat.modulus).toBeUndefined();
    expect(seat.stiffness).toBeGreaterThan(0);
  });
});

describe('joints', () => {
  it('of all fasteners become like one of them', () => {
    const [first, ...others] = sampleHead.fasteners;
    const given = { ...sampleHead, fasteners: [{ ...first, preload: 800, grade: '12.9' as const }, ...others] };
    const alike = checkHeadModel(withFastenersLike(given, 0));
    expect(alike.fasteners.map(({ preload, grade }) => [preload, grade])).toEqual(
      given.fasteners.map(() => [800, '12.9']),
    );
    expect(alike.fasteners.map(({ name, at }) => [name, at])).toEqual(
      sampleHead.fasteners.map(({ name, at }) => [name, at]),
    );
  });
});

it('leaves the measured height of the board where it was measured', () => {
  const measured = checkHeadModel({
    ...sampleHead,
    fasteners: sampleHead.fasteners.map((fastener, i) => ({ ...fastener, height: 0.01 * i })),
  });
  expect(withFastenersLike(measured, 1).fasteners.map(({ height }) => height)).toEqual(
    measured.fasteners.map(({ height }) => height),
  );
  expect(withNewFastener(measured).fasteners.at(-1)?.height).toBeUndefined();
});

describe('withRelaxing', () => {
  it('is undone without a trace', () => {
    const relaxing = withRelaxing(sampleHead, true);
    expect(relaxing.sites.probes.relax).toBe(true);
    expect(withRelaxing(relaxing, false)).toEqual(sampleHead);
  });
});

describe('drafts of a list', () => {
  it('stay while the list has the same items', () => {
    const drafts = createDraftStore();
    const model = checkHeadModel({ ...sampleHead, cases: [{ name: 'row', touched: ['A1'] }] });
    const over = valueAt(model, 'cases.0.touched');
    keepDraft(drafts, 'cases.0.touched', { text: 'A1 Z9', message: 'no', begun: false, over });
    expect(hasDrafts(drafts.getState(), checkHeadModel(model))).toBe(true);
    const other = { ...model, cases: [{ name: 'row', touched: ['A2'] }] };
    expect(hasDrafts(drafts.getState(), other)).toBe(false);
  });
});
