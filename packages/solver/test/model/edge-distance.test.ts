import { expect, test } from 'vitest';
import { siteLayout } from '../../src/layout/sites.ts';
import { partEdges, partRegions } from '../../src/model/edge-distance.ts';
import type { HeadModel } from '../../src/model/head-model.ts';
import { headParts } from '../../src/model/parts.ts';
import { twoByTwo } from './two-by-two.ts';

// Sharp corners, so that every distance is one of plane geometry. Body |x| < 20, |y| < 15; the frame reaches from
// |x| = 16 to 30 and from |y| = 11 to 25, with a rib of another thickness across the window.
const head: HeadModel = {
  ...twoByTwo,
  body: { ...twoByTwo.body, outline: { rectangle: [40, 30] } },
  frame: {
    ...twoByTwo.frame!,
    outer: { rectangle: [60, 50] },
    window: { rectangle: [32, 22] },
    side: 'board',
    ribs: [{ from: [0, -12], to: [0, 12], width: 2, thickness: 2 }],
  },
};
const at = (model: HeadModel, x: number, y: number) =>
  partEdges(partRegions(headParts(model, siteLayout(model.sites), 0.01), model.frame?.side), [x, y]);

test('tells the distance to the edge of each part, positive on it and negative off it', () => {
  // On the frame alone: 4 mm past the body, 6 mm inside the outer edge.
  expect(at(head, 24, 0)).toEqual({ body: -4, frame: 6, upper: 'frame' });
  // Past a corner of the body by 3 and 4 mm.
  expect(at(head, 23, 19)).toEqual({ body: -5, frame: 6, upper: 'frame' });
  // On both: 2.5 mm inside the body, 1.5 mm outside the window.
  expect(at(head, 17.5, 0)).toEqual({ body: 2.5, frame: 1.5, upper: 'body' });
  // On the body alone, over the window.
  expect(at(head, 10, 0)).toEqual({ body: 10, frame: -6, upper: 'body' });
  expect(at(head, 40, 0)).toEqual({ body: -20, frame: -10, upper: null });
});

test('takes a rib for a part of the frame, whatever its thickness', () => {
  expect(at(head, 0.25, 0)).toMatchObject({ frame: 0.75 });
  expect(at(head, 0, 12)).toMatchObject({ frame: expect.closeTo(Math.hypot(1, 1), 9) });
});

test('lets a screw head sit on the frame where that lies on the device side of the body', () => {
  const over: HeadModel = { ...head, frame: { ...head.frame!, side: 'device' } };
  expect(at(over, 17.5, 0)).toEqual({ body: 2.5, frame: 1.5, upper: 'frame' });
  expect(at(over, 10, 0).upper).toBe('body');
  expect(at({ ...over, frame: { ...over.frame!, side: 'level' } }, 17.5, 0).upper).toBe('frame');
});

test('counts openings as edges, and a head without a frame as all body', () => {
  const bare: HeadModel = {
    ...head,
    frame: undefined,
    body: { ...head.body, openings: [{ rectangle: [4, 4], centre: [12, 0] }] },
  };
  expect(at(bare, 15.5, 0)).toEqual({ body: 1.5, frame: -Infinity, upper: 'body' });
  expect(at(bare, 12, 0)).toEqual({ body: -2, frame: -Infinity, upper: null });
});
