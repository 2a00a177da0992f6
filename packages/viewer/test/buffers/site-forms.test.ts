import { describe, expect, it } from 'vitest';
import type { Box } from '../../src/buffers/least-covering.ts';
import { siteForms } from '../../src/buffers/site-forms.ts';

const row = (pitch: number) =>
  [0, 1, 2, 3, 4].map((i) => ({ x: 100 + pitch * i, y: 100, weight: 5 - Math.abs(i - 2), worst: i === 2 }));
const apart = (a: Box, b: Box): boolean =>
  a.left + a.width <= b.left || b.left + b.width <= a.left || a.top + a.height <= b.top || b.top + b.height <= a.top;

describe('labels of sites', () => {
  it.each([
    [80, 'full'],
    [45, 'short'],
    [33, 'brief'],
    [24, 'least'],
  ])('%i px apart take the form %s, all of them', (pitch, form) => {
    expect(siteForms(row(pitch), []).map((label) => label.form)).toEqual([form, form, form, form, form]);
  });

  it('make way for a screw, and the worst keeps its own beside it', () => {
    const head: Box = { left: 140, top: 66, width: 16, height: 18 };
    const labels = siteForms(row(24), [head]);
    expect(labels.every(({ box }) => box !== null && apart(box, head))).toBe(true);
    const under: Box = { ...head, top: 96 };
    const beside = siteForms(row(24), [under]);
    expect(beside[2].form).toBe('least');
    expect(apart(beside[2].box!, under)).toBe(true);
    // The screw lies on the value of the worst, whose label stands elsewhere; its neighbours keep theirs.
    expect(beside.filter(({ form }) => form === 'none')).toEqual([]);
  });

  it('always show the worst, whatever it covers', () => {
    const all: Box = { left: 0, top: 0, width: 400, height: 200 };
    expect(siteForms(row(24), [all]).map(({ form }) => form)).toEqual(['none', 'none', 'least', 'none', 'none']);
  });
});
