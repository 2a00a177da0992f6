import { describe, expect, it } from 'vitest';
import { FIRST_CHOICES, readAs, typedLength } from '../../src/exchange/readings.ts';
import { sampleHead } from '../state/sample-head.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
/** Two groups of 2 x 2 probes, 3 mm apart, with two columns that may be the force. */
const LIST = bytes(
  ['x,y,preload,at test', ...[0, 1, 4, 5].flatMap((x) => [0, 1].map((y) => `${x},${y},5,9`))].join('\n'),
);

describe('choices about a file', () => {
  it('give the force its unit and its column', () => {
    const preload = (choices: Partial<typeof FIRST_CHOICES>) =>
      readAs(LIST, { ...FIRST_CHOICES, ...choices }).take(sampleHead).model.sites.probes.preload;
    expect(preload({})).toBe(5);
    // 1 gf = 9.80665 mN (standard gravity, CGPM 1901).
    expect(preload({ forceUnits: 'gf' })).toBeCloseTo(5 * 9.80665e-3, 9);
    expect(preload({ forceUnits: 'cN', columns: { force: 'at test', x: '' } })).toBeCloseTo(0.09, 9);
  });

  it('say what parts sites, in any unit, and pass over what is no length', () => {
    const sites = (gap: string) => readAs(LIST, { ...FIRST_CHOICES, gap }).preview.counts.sites;
    expect(sites('2')).toBe(2);
    expect(sites('4')).toBe(1);
    expect(sites('0.16 in')).toBe(1);
    expect(sites('wide')).toBe(sites(''));
    expect([typedLength('wide'), typedLength('-1'), typedLength('')]).toEqual([null, null, undefined]);
  });

  it('close the gaps of a drawing', () => {
    // A square of 10 mm whose last side ends 0.2 mm short.
    const lines = [
      [0, 0, 10, 0],
      [10, 0, 10, 10],
      [10, 10, 0, 10],
      [0, 10, 0, 0.2],
    ].map(([x1, y1, x2, y2]) => `<line x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}"/>`);
    const svg = bytes(
      `<svg xmlns="http://www.w3.org/2000/svg" width="12mm" height="12mm" viewBox="0 0 12 12">${lines.join('')}</svg>`,
    );
    const drawing = (gap: string) => () => readAs(svg, { ...FIRST_CHOICES, kind: 'outline', gap });
    expect(drawing('')).toThrow(/closed/);
    expect(drawing('0.3')).not.toThrow();
    expect(drawing('20')).toThrow(/0 to 10 mm/);
  });
});
