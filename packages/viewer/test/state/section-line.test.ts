import { solveHead } from '@flathead/solver';
import { expect, it } from 'vitest';
import { createRunStore } from '../../src/state/run-store.ts';
import { axisOf, beginSectionMove, sectionLine } from '../../src/state/section-line.ts';
import { createViewStore } from '../../src/state/view-store.ts';
import { sampleHead } from './sample-head.ts';

const { result } = solveHead(sampleHead, { quality: 'live' });

it('starts with the row of the worst site, is pulled by its ends onto rows and columns, and put back', () => {
  const run = createRunStore();
  run.setState({ solved: { model: sampleHead, result, quality: 'live' } });
  const view = createViewStore();
  const worst = result.sites.find(({ name }) => name === result.cases[0].bow.site)!;
  expect(sectionLine(result, null, null)).toEqual({ from: [-30, worst.centre[1]], to: [30, worst.centre[1]] });

  const move = beginSectionMove({ view, run }, 'from');
  move.to([-7.6, -15.02], 0.1);
  expect(view.getState().section?.from).toEqual([-7, -15]);
  move.to([-7.6, -15.02], 0);
  expect(view.getState().section?.from).toEqual([-7.6, -15.02]);
  move.cancel();
  expect(view.getState().section).toBeNull();

  // Held at 0.12 of its 60 mm.
  beginSectionMove({ view, run }, 'whole').to([-22.8, -5.8], 0.1);
  expect(view.getState().section).toEqual({ from: [-30, -6], to: [30, -6] });
});

it('tells places along a row or a column by their coordinate, and across by none', () => {
  expect(axisOf({ from: [-30, 5.2], to: [30, 5.2] })).toEqual({ name: 'x', from: -30, to: 30 });
  expect(axisOf({ from: [4, 20], to: [4, -20] })).toEqual({ name: 'y', from: 20, to: -20 });
  expect(axisOf({ from: [4, 20], to: [5, -20] })).toBeNull();
  expect(axisOf({ from: [4, 20], to: [4, 20] })).toBeNull();
});
