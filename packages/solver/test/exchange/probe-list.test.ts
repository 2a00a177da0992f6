import { describe, expect, it } from 'vitest';
import { readProbeList } from '../../src/exchange/probe-list.ts';
import { takeProbes } from '../../src/exchange/take-probes.ts';
import { compileHead } from '../../src/model/compile.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { solveHead } from '../../src/solve-head.ts';
import { faultOf } from '../model/fault-of.ts';
import { altered, twoByTwo } from '../model/two-by-two.ts';

type XY = readonly [number, number];

/** Places of probes: sites of a pattern, and in each an array. */
function places(sites: readonly [number, number], pitch: XY, array: readonly [number, number], p: XY): XY[] {
  const line = (n: number, step: number) => Array.from({ length: n }, (_, i) => (i - (n - 1) / 2) * step);
  return line(sites[1], pitch[1]).flatMap((sy) =>
    line(sites[0], pitch[0]).flatMap((sx) =>
      line(array[1], p[1]).flatMap((y) => line(array[0], p[0]).map((x): XY => [sx + x, sy + y])),
    ),
  );
}

const four = places([2, 2], [12, 10], [15, 13], [0.3, 0.3]);
const list = (points: readonly XY[], head = 'x,y', row = ([x, y]: XY) => `${x},${y}`) =>
  [head, ...points.map(row)].join('\n');

describe('a probe list', () => {
  it('gives sites by the gaps between them, their pattern and the array in each', () => {
    const { read, preview } = readProbeList(list(four));
    expect(preview.counts).toEqual({ probes: 780, sites: 4, dropped: 0 });
    expect(read).toMatchObject({ columns: 2, rows: 2, pitch: [12, 10], origin: [0, 0], alike: true, forced: false });
    expect(read.sites.map(({ name }) => name)).toEqual(['A1', 'A2', 'B1', 'B2']);
    expect(read.sites[0].centre).toEqual([-6, 5]);
    expect(read.sites[0].field).toEqual([4.5, 3.9]);
    expect(read.sites[0].lattice).toMatchObject({ pattern: 'square', columns: 15, rows: 13 });
    expect(preview.units).toEqual({ length: 'mm', basis: 'guessed' });
    expect(preview.extents).toEqual({ min: [-8.1, -6.8], max: [8.1, 6.8] });
  });

  it.each([
    ['um in the header', list(four, 'X (um);Y (um)', ([x, y]) => `${1000 * x};${1000 * y}`)],
    ['um by their size', list(four, 'x;y', ([x, y]) => `${Math.round(1000 * x)};${Math.round(1000 * y)}`)],
    ['mil', list(four, 'y_mil\tx_mil', ([x, y]) => `${y / 0.0254}\t${x / 0.0254}`)],
    ['a mix of mm and inch by column', list(four, 'x [mm],y [in]', ([x, y]) => `${x},${y / 25.4}`)],
    ['units in cells', list(four, 'x,y', ([x, y]) => `${x}mm,${y / 25.4} in`)],
    ['decimal commas', list(four, 'x;y', ([x, y]) => `${x.toFixed(4)};${y.toFixed(4)}`.replaceAll('.', ','))],
    [
      'quoted decimal commas',
      list(four, 'x,y', ([x, y]) => `"${x.toFixed(4).replace('.', ',')}","${y.toFixed(4).replace('.', ',')}"`),
    ],
    [
      'blanks between decimal commas',
      list(four, 'x y', ([x, y]) => `${x.toFixed(4)} ${y.toFixed(4)}`.replaceAll('.', ',')),
    ],
    [
      'a byte order mark, CRLF and sep=',
      `\uFEFFsep=;\r\n${list(four, 'x;y', ([x, y]) => `${x};${y}`).replaceAll('\n', '\r\n')}`,
    ],
    ['no header, rows counted', four.map(([x, y], i) => `${i + 1} ${x} ${y}`).join('\n')],
    [
      'a preamble and comments',
      `Probe list, rev C\n# made up\n${list(four, 'Pin,Pos X,Pos Y,Net', ([x, y]) => `7,${x},${y},GND`)}`,
    ],
    ['another order', list([...four].reverse())],
    ['a minus sign in print', list(four, 'x;y', ([x, y]) => `${x};${y}`.replaceAll('-', '\u2212'))],
  ])('is the same with %s', (_, text) => {
    const { read, preview } = readProbeList(text);
    expect(preview.dropped.filter(({ reason }) => !reason.includes('before the header'))).toEqual([]);
    expect(read).toMatchObject({ columns: 2, rows: 2, alike: true });
    read.sites.forEach(({ centre, probes }, i) => {
      expect(probes).toHaveLength(195);
      expect(centre[0]).toBeCloseTo(i % 2 === 0 ? -6 : 6, 3);
      expect(centre[1]).toBeCloseTo(i < 2 ? 5 : -5, 3);
    });
  });

  it('leaves out single rows with line and reason', () => {
    const text = [
      'x,y,force',
      '0,0,0.1',
      '0.5,abc,0.1',
      '1,0',
      '1,0,0.1',
      '2,,0.1',
      '1.5,0,-3',
      '2,0,"0,1"',
      '3e9,0,0.1',
      '2.5,0,5 cN',
      '3,0,7 bar',
    ];
    const { read, preview } = readProbeList(text.join('\n'), { gap: 10 });
    expect(read.sites[0].probes.map(([, , force]) => force)).toEqual([0.1, null, 0.05]);
    expect(preview.dropped.map(({ line }) => line)).toEqual([3, 5, 6, 7, 8, 9, 11]);
    const reasons = preview.dropped.map(({ reason }) => reason);
    expect(reasons[0]).toMatch(/y is "abc", which is no number/);
    expect(reasons[1]).toMatch(/on line 4 already/);
    expect(reasons[2]).toMatch(/y is empty/);
    expect(reasons[3]).toMatch(/force is -3 N/);
    expect(reasons[4]).toMatch(/decimal point; write all numbers alike/);
    expect(reasons[5]).toMatch(/check the unit/);
    expect(reasons[6]).toMatch(/no known unit of force/);
  });

  it.each([
    ['empty', '', /is empty/],
    ['of words', 'x,y\na,b\nc,d', /no probe that can be read: on line 2 x is "a"/],
    ['without y', 'x,force\n1,2\n3,4', /no column for y/],
    ['with two x', 'x,X,y\n1,2,3', /Columns 1 and 2 on line 1 .* could all be x/],
    ['binary', 'PK\u0003\u0004\0\0', /no plain text/],
    ['with an open quotation mark', 'x,y\n1,2\n"3,4\n5,6', /quotation mark on line 3/],
  ])('is refused when %s', (_, text, message) => {
    expect(faultOf(() => readProbeList(text))).toMatchObject({
      code: 'UNREADABLE',
      message: expect.stringMatching(message),
    });
  });

  it('takes the column that it is told, and says which', () => {
    const text = 'a;b;c\n1;2;3\n4;5;6';
    const { read, preview } = readProbeList(text, { columns: { x: 'c', y: '1' }, gap: 100 });
    expect(preview.extents).toEqual({ min: [3, 1], max: [6, 4] });
    expect(preview.guesses.join(' ')).toMatch(/"c" as x, "a" as y.*not read: "b"/);
    expect(read.sites).toHaveLength(1);
    expect(faultOf(() => readProbeList(text, { columns: { x: 'd', y: '1' } }))).toMatchObject({ code: 'USAGE' });
  });

  it('groups by a site column, and by one gap size when the rows are unevenly apart', () => {
    const named = readProbeList(list(four, 'dut,x,y', ([x, y]) => `${x < 0 ? 'left' : 'right'},${x},${y}`));
    expect(named.read).toMatchObject({ columns: 2, rows: 1 });
    expect(named.preview.guesses.join(' ')).toMatch(/"left" is A1, "right" is A2/);
    const uneven = places([3, 2], [6, 25], [4, 4], [0.5, 0.5]);
    expect(readProbeList(list(uneven)).read).toMatchObject({ columns: 3, rows: 2, pitch: [6, 25] });
  });

  it('sees a triangular array', () => {
    const rows = Array.from({ length: 9 }, (_, j) =>
      Array.from({ length: 8 }, (_, i): XY => [0.4 * i + (j % 2) * 0.2, j * 0.4 * Math.sqrt(0.75)]),
    );
    const [{ lattice }] = readProbeList(list(rows.flat())).read.sites;
    expect(lattice).toMatchObject({ pattern: 'triangular', rows: 9, columns: 8 });
    expect(lattice!.pitch[0]).toBeCloseTo(0.4, 9);
  });

  it('keeps sites of their own where they differ, in place and in probes', () => {
    const scattered: XY[] = [
      [-6, -6],
      [3, -5],
      [-2, 7],
    ];
    const points = scattered.flatMap(([sx, sy], s) =>
      Array.from({ length: 8 + 4 * s }, (_, i): XY => [sx + 0.4 * (i % 4), sy + 0.4 * Math.floor(i / 4)]),
    );
    const { read } = readProbeList(list(points));
    expect(read).toMatchObject({ columns: 3, rows: 1, pitch: null, alike: false });
    const { model } = takeProbes(twoByTwo, read, 'points');
    const { sites, siteProbes } = compileHead(checkHeadModel(model));
    expect(sites.map(({ centre }) => centre)).toEqual(read.sites.map(({ centre }) => centre));
    expect(siteProbes.map(({ count }) => count)).toEqual([8, 16, 12]);
    expect(faultOf(() => takeProbes(twoByTwo, read, 'field')).message).toMatch(/Take the list as points/);
  });

  it('becomes a head: as points or as fields, with the mean of the forces and the holes of its array', () => {
    const forced = readProbeList(list(four, 'x,y,F (cN)', ([x, y]) => `${x},${y},${x < 0 ? 3 : 5}`)).read;
    const holes = { pitch: 0.5, diameter: 0.15, pattern: 'triangular' };
    const base = checkHeadModel(altered(twoByTwo, { 'sites.probes.holes': holes }));
    const field = takeProbes(base, forced, 'field').model.sites;
    expect(field).toMatchObject({ die: [6, 5], skip: [1, 1], columns: 2, rows: 2 });
    expect(field.probes).toMatchObject({ count: 195, preload: 0.04, field: [4.5, 3.9] });
    const even = readProbeList(list(four)).read;
    expect(takeProbes(base, even, 'field').model.sites.probes.holes).toEqual({
      pitch: 0.3,
      diameter: 0.15,
      pattern: 'square',
    });
    const points = checkHeadModel(takeProbes(twoByTwo, forced, 'points').model);
    expect(points.sites.own!.A1.positions![0]).toEqual([-2.1, 1.8, 0.03]);
    expect(solveHead(points).result.cases[0].load).toBeCloseTo(195 * 2 * (0.03 + 0.05), 9);
  });
});

describe('a list of 20,000 probes', () => {
  it('is read, and solved as point loads within 1 % of the bow of fields, in under 5 s', () => {
    const many = places([5, 2], [9.2, 10.4], [40, 50], [0.14, 0.147]);
    const text = list(
      many,
      'Site;X / mm;Y / mm',
      ([x, y]) => `${Math.round(x / 9.2)}|${Math.floor(y / 10.4)};${x.toFixed(4)};${y.toFixed(4)}`,
    );
    const base = checkHeadModel(
      altered(twoByTwo, {
        'body.outline': { rectangle: [72, 46] },
        'frame.outer': { rectangle: [80, 54] },
        'frame.window': { rectangle: [50, 24] },
      }),
    );
    const started = performance.now();
    const { read } = readProbeList(text.replaceAll('.', ','));
    const points = solveHead(checkHeadModel(takeProbes(base, read, 'points').model)).result;
    const spent = performance.now() - started;
    expect(read).toMatchObject({ columns: 5, rows: 2, alike: true });
    const field = solveHead(checkHeadModel(takeProbes(base, read, 'field').model)).result;
    expect(points.cases[0].load).toBeCloseTo(20_000 * 0.04, 6);
    const ratio = points.cases[0].bow.value / field.cases[0].bow.value;
    expect(Math.abs(ratio - 1)).toBeLessThan(0.01);
    expect(ratio).not.toBe(1);
    expect(spent).toBeLessThan(5000);
    if (process.env.SHOW_TIMES) console.log({ spent, ratio });
  });
});
