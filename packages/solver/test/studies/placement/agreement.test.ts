import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/point.ts';
import type { HeadModel } from '../../../src/model/head-model.ts';
import { solveHead } from '../../../src/solve-head.ts';
import { meshedOf } from '../../../src/structure/groups.ts';
import { fieldJudge } from '../../../src/studies/placement/field.ts';
import { headField } from '../../../src/studies/placement/head-field.ts';
import { placedAs } from '../../../src/studies/placement/names.ts';
import { applyPlacement } from '../../../src/studies/placement/placement.ts';
import { standOnMany } from '../../../src/studies/placement/stand.ts';
import { bare, framed, randomPoints } from './heads.ts';

/**
 * Both stand on the same mesh and factor, so they differ by rounding alone: that of a grounded plate whose rigid motions
 * cancel, 1e-8 on a narrow base, with two digits to spare.
 */
const ROUNDING = 1e-6;

const oneWay: HeadModel = {
  ...framed,
  fasteners: framed.fasteners.map((fastener) => ({ ...fastener, acts: 'pull' as const })),
  seats: [
    { name: 'left', shape: { rectangle: [4, 24], centre: [-29, 0] }, modulus: 200 },
    { name: 'right', shape: { rectangle: [4, 20], centre: [29, 3] }, modulus: 200 },
  ],
};

const relaxed: HeadModel = {
  ...framed,
  sites: { ...framed.sites, probes: { ...framed.sites.probes, rate: 0.4, relax: true } },
};

const variants: [string, HeadModel, number][] = [
  ['a bare body on springs', bare, 4],
  ['a framed body on screws', framed, 6],
  ['a bonded frame, which stretches where it bends', { ...framed, frame: { ...framed.frame!, join: 'bonded' } }, 5],
  ['a screwed frame between sliding and bonded', { ...framed, frame: { ...framed.frame!, join: 'bracket' } }, 4],
  ['screws that only pull and pads that only push', oneWay, 4],
  ['probes that relax', relaxed, 5],
  ['heat through the thickness', { ...framed, cases: [{ name: 'hot', temperature: 85, gradient: 4 }] }, 4],
];

describe('values of placements by flexibility', () => {
  it.each(variants)('agree with the solver on %s', (_, model, count) => {
    const pick = uniform(3);
    const run = solveHead(model, { quality: 'live' });
    const { main, bonded } = run.stages;
    const meshOf = (end: string) => meshedOf(end === 'bonded' ? bonded!.main : main);
    const field = headField(model, { objective: 'share', through: 'either' }, meshOf);
    const draws = Array.from({ length: 6 }, () => randomPoints(pick, count, open(field)));
    const places = [...field.always, ...draws.flat().map((at) => field.placeAt(at))];
    const stands = field.grounds.map((ground) => {
      const steps = standOnMany(ground, places, field.fixed, field.always.length);
      for (;;) {
        const next = steps.next();
        if (next.done) return next.value;
      }
    });
    const judge = fieldJudge(field, stands, count);
    const values = draws.map((points, d) => {
      const chosen = points.map((_, i) => field.always.length + count * d + i);
      const reading = judge.reading(chosen);
      const variant = applyPlacement(model, placedAs(model, field, points));
      const { result } = solveHead(variant, { quality: 'live', previous: run.stages });
      const bow = result.verdict.criteria.find(({ criterion }) => criterion === 'bow')!.value;
      const flatness = result.verdict.criteria.find(({ criterion }) => criterion === 'flatness')!.value;
      expect(Math.abs(reading.bow / bow - 1)).toBeLessThan(ROUNDING);
      expect(Math.abs(reading.flatness / flatness - 1)).toBeLessThan(ROUNDING);
      return { chosen, value: reading.value };
    });

    // Witnesses learnt from some placements never reject one that is better than asked for.
    for (const { chosen, value } of values)
      for (const share of [0.5, 0.99, 1.01, 2]) {
        const said = judge.value(chosen, share * value);
        if (share > 1) expect(Math.abs(said / value - 1)).toBeLessThan(1e-12);
        else expect(said).toBeGreaterThanOrEqual(share * value);
      }
  });

  it('let seats lift off in some of these placements', () => {
    const field = headField(oneWay, { through: 'either' });
    const { result } = solveHead(
      applyPlacement(oneWay, placedAs(oneWay, field, randomPoints(uniform(3), 4, open(field)))),
    );
    const lifted = result.cases.flatMap(({ seats }) => seats.map((seat) => seat.lifted));
    expect(Math.max(...lifted)).toBeGreaterThan(0);
  });
});

function open({ room }: ReturnType<typeof headField>) {
  return (at: Point) => room.allows(at) && room.siteGap(at) > 0;
}

function uniform(seed: number): (low: number, high: number) => number {
  const generator = xoroshiro128plus(seed);
  return (low, high) => low + ((high - low) * (generator.next() >>> 0)) / 2 ** 32;
}
