import { describe, expect, it } from 'vitest';
import { axisValues, readAxis } from '../../../src/studies/sweep/axis-values.ts';
import { readDesign } from '../../../src/studies/sweep/design-table.ts';
import { sweepSteps } from '../../../src/studies/sweep/sweep.ts';
import { faultOf } from '../../model/fault-of.ts';
import { thinHead } from '../small-head.ts';

describe('a design of experiments', () => {
  it.each([
    ['commas', ','],
    ['semicolons', ';'],
    ['tabs', '\t'],
  ])('is read from a table with %s', (_, comma) => {
    const text = ['body.thickness,body.material', '4,peek', '5,polyimide'].join('\r\n').replaceAll(',', comma);
    expect(readDesign(`\uFEFF# remark\n${text}\n\n`)).toEqual({
      design: {
        parameters: [{ path: ['body.thickness'] }, { path: ['body.material'] }],
        rows: [
          [4, 'peek'],
          [5, 'polyimide'],
        ],
      },
    });
  });

  it('is solved row by row: E 3.6 and 3.5 GPa, D with the cube of the thickness and E/(1 - nu^2)', () => {
    const steps = sweepSteps(thinHead, readDesign('body.thickness,body.material\n4,peek\n3,peek\n4,polyimide\n'));
    const bows = [steps.next(), steps.next(), steps.next()].map(({ value }) =>
      'figures' in value ? value.figures!.bow.value : Number.NaN,
    );
    expect(bows[1] / bows[0]).toBeCloseTo((4 / 3) ** 3, 6);
    expect(bows[2] / bows[0]).toBeCloseTo(3.6 / 3.5, 6);
  });

  it.each([
    ['body.thickness\n', 'no rows'],
    ['', 'no rows'],
    ['a,b\n1\n', 'Row 2 of the design has 1 values, but there are 2 headings'],
    ['a,b\n1,2\n1,\n', 'Row 3 of the design has no value for b'],
    ['a,b\n"1,2\n', 'is not a table'],
  ])('is refused when damaged: %j', (text, words) => {
    expect(faultOf(() => readDesign(text)).message).toContain(words);
  });
});

describe('an axis', () => {
  it('is evenly spaced, or a list', () => {
    expect(axisValues(readAxis('x=0..1:11'))).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1]);
    expect(readAxis('a[0]+b=3,peek,true')).toEqual({ path: ['a[0]', 'b'], values: [3, 'peek', true] });
    expect(axisValues(readAxis('x=-2..-1:3'))).toEqual([-2, -1.5, -1]);
  });

  it.each(['x', 'x=', '=3', 'x=1..y:3', 'x=1,,2'])('is refused: %s', (text) => {
    expect(faultOf(() => readAxis(text)).code).toBe('USAGE');
  });
});
