import { expect, test } from 'vitest';
import { compileHead } from '../../src/model/compile.ts';
import { edgeRemarks } from '../../src/model/edge-remarks.ts';
import type { HeadModel } from '../../src/model/head-model.ts';
import { twoByTwo } from './two-by-two.ts';

// Body |x| < 26, |y| < 23 under a frame |x| < 40, |y| < 36 with a window |x| < 15; the body is uppermost where there is one.
const wide: HeadModel = {
  ...twoByTwo,
  body: { ...twoByTwo.body, outline: { rectangle: [52, 46] } },
  frame: { ...twoByTwo.frame!, outer: { rectangle: [80, 72] } },
  fasteners: [
    { name: 'F1', at: [-33, 28], bearing: 4, stiffness: 'rigid' },
    { name: 'F2', at: [33, 28], bearing: 4, stiffness: 'rigid' },
    { name: 'F3', at: [0, -30], bearing: 4, stiffness: 'rigid' },
  ],
};
const remarks = (model: HeadModel) => edgeRemarks(model, compileHead(model));
const withThird = (x: number, y: number, model = wide): HeadModel => ({
  ...model,
  fasteners: model.fasteners.map((fastener) => (fastener.name === 'F3' ? { ...fastener, at: [x, y] } : fastener)),
});

test('has nothing to say of fasteners well within the part they sit on', () => {
  expect(remarks(wide)).toEqual([]);
  // 4 mm inside the rim of the body: just the bearing diameter.
  expect(remarks(withThird(0, -19))).toEqual([]);
});

test('says how far a bearing overhangs the edge of the part it sits on', () => {
  // 1.7 mm inside the rim, radius 2.
  expect(remarks(withThird(0, -21.3))).toEqual([
    'Fastener F3 sits on the edge of the ceramic body: its bearing of 4 mm overhangs by 0.30 mm.',
    'Fastener F3 goes through the ceramic body close to its rim: its centre is 1.7 mm from it, where a rule of thumb asks for one bearing diameter, 4 mm.',
  ]);
  // 1.5 mm inside the outer edge of the frame.
  expect(remarks(withThird(0, -34.5))).toEqual([
    'Fastener F3 sits on the edge of the frame: its bearing of 4 mm overhangs by 0.50 mm.',
  ]);
});

test('warns of a rim that is near only in what is brittle', () => {
  const metal: HeadModel = { ...wide, body: { ...wide.body, material: 'stainless-17-4' } };
  expect(remarks(withThird(0, -20))).toEqual([
    'Fastener F3 goes through the ceramic body close to its rim: its centre is 3.0 mm from it, where a rule of thumb asks for one bearing diameter, 4 mm.',
  ]);
  expect(remarks(withThird(0, -20, metal))).toEqual([]);
});

test('tells a bearing on the frame that the body under its edge does not carry', () => {
  // On the frame alone, 1.2 mm past the rim of the body that rises beside it.
  expect(remarks(withThird(0, -24.2))).toEqual([
    'Fastener F3 sits across the rim of the body: its bearing of 4 mm reaches 0.80 mm over it.',
  ]);
});
