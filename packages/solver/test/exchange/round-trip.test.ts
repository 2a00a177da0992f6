import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { readFastenerList, takeFasteners } from '../../src/exchange/fastener-list.ts';
import { readDrawing } from '../../src/exchange/outline.ts';
import { readProbeList } from '../../src/exchange/probe-list.ts';
import { takeOutline } from '../../src/exchange/take-outline.ts';
import { takeProbes } from '../../src/exchange/take-probes.ts';
import { headDxf } from '../../src/exchange/write-dxf.ts';
import { fastenerCsv, probeCsv } from '../../src/exchange/write-lists.ts';
import type { HeadModel } from '../../src/model/head-model.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { faultOf } from '../model/fault-of.ts';
import { altered, twoByTwo } from '../model/two-by-two.ts';

const polygon: [number, number][] = [
  [-8.123456789, -14],
  [8, -14.25],
  [7 / 3, -12 - 1 / 7],
  [-8, -10],
];

const head = checkHeadModel(
  altered(twoByTwo, {
    'body.outline': { rectangle: [52.1234567, 46.000001], centre: [1 / 3, -1 / 7], corner: 2.345678 },
    'body.openings': [{ circle: 1.23456789, centre: [0.1, 12.7] }, { polygon }],
    keepOuts: [
      { name: '=connector, "far"', shape: { rectangle: [8, 6], centre: [0, 19] }, clearance: 0.5 },
      {
        name: 'Ölkanal',
        shape: {
          polygon: [
            [20, 0],
            [24, 0],
            [22, 1],
            [24, 9],
            [20, 9],
          ],
        },
      },
    ],
    fasteners: twoByTwo.fasteners.map((fastener, i) => ({
      ...fastener,
      name: ['@F1', '-2', '=SUM(A1)', 'plain'][i],
      at: [fastener.at[0] + 1 / 3, fastener.at[1]],
      ...(i === 0 ? {} : { height: 0.01 * i }),
    })),
  }),
);

/** A head in which everything that is read back is something else. */
const blank = checkHeadModel(
  altered(head, {
    'body.outline': { circle: 60 },
    'body.openings': [],
    'frame.outer': { circle: 70 },
    'frame.window': { circle: 50 },
    keepOuts: [{ name: '=connector, "far"', shape: { circle: 1 }, clearance: 0.5 }],
    fasteners: head.fasteners.map((fastener) => ({ ...fastener, at: [0, 0] })),
  }),
);

/** All numbers within 1e-6, all else the same; a centre at the origin may be left out. */
function expectSame(actual: unknown, wanted: unknown): void {
  if (typeof wanted === 'number') expect(Math.abs(Number(actual) - wanted)).toBeLessThan(1e-6);
  else if (typeof wanted !== 'object' || wanted === null) expect(actual).toBe(wanted);
  else {
    const [a, b] = [actual, wanted].map((side) => filled(side as object));
    expect(Object.keys(a).sort()).toEqual(Object.keys(b).sort());
    for (const key of Object.keys(b)) expectSame(Reflect.get(a, key), Reflect.get(b, key));
  }
}

function filled(value: object): object {
  const isShape = 'rectangle' in value || 'circle' in value;
  return isShape ? { centre: [0, 0], ...('rectangle' in value ? { corner: 0 } : {}), ...value } : value;
}

describe('out and in again', () => {
  it('a DXF gives the same outline, openings, frame, fasteners and keep-outs to 1e-6 mm', () => {
    const { read, preview } = readDrawing(headDxf(head));
    expect(preview.dropped).toEqual([]);
    const { model, notes } = takeOutline(blank, read, 'auto');
    expectSame(model, head);
    expect(notes).toEqual([expect.stringMatching(/Not taken: \d+ shapes on "SITES", "HOLES"/)]);
  });

  it('a fastener table gives the same fasteners to 1e-6 mm, whatever their names', () => {
    const text = fastenerCsv(head);
    expect(text).toContain("'=SUM(A1)");
    const { model } = takeFasteners(blank, readFastenerList(text).read);
    expectSame(model.fasteners, head.fasteners);
  });

  const regular = checkHeadModel(
    altered(twoByTwo, {
      'sites.probes.count': 180,
      'sites.probes.field': [4.5, 3.6],
      'sites.probes.holes': { pitch: 0.3, diameter: 0.15, pattern: 'square' },
    }),
  );
  const positions: [number, number, number?][] = [
    [-2, 1.7],
    [0.123456789, 1.1, 0.07],
    [2, 1.7],
    [0.5, 0],
    [-2, -1.7],
    [2, -1.7, 0.01],
  ].map((p) => p as [number, number, number?]);
  const own: HeadModel['sites']['own'] = {
    A1: { positions: positions.slice(0, 5) },
    B2: { at: [6.1, -5.2], positions },
  };
  const listed = { ...regular.sites.probes, holes: undefined, count: 6, positions };

  it.each([
    ['fields', regular, 'field'],
    ['listed probes', altered(regular, { 'sites.probes': listed }), 'points'],
    ['sites of their own', altered(regular, { 'sites.probes': listed, 'sites.own': own }), 'points'],
  ] as const)('a probe list gives the same %s to 1e-6 mm', (_, value, as) => {
    const model = checkHeadModel(value);
    const start = checkHeadModel(
      altered(regular, { 'sites.pitch': [9, 9], 'sites.die': undefined, 'sites.skip': undefined }),
    );
    const text = probeCsv(model);
    const { model: back } = takeProbes(start, readProbeList(text).read, as);
    // What presses where is the same, whatever the lists are called.
    const again = probeCsv(checkHeadModel(back));
    const numbers = (csv: string) =>
      csv
        .split('\r\n')
        .slice(2, -1)
        .map((row) => row.split(',').slice(2).map(Number))
        .sort((a, b) => a[0] - b[0] || a[1] - b[1]);
    if (as === 'field') {
      expectSame(back.sites.probes, regular.sites.probes);
      expectSame(
        [back.sites.pitch, back.sites.origin],
        [
          [12, 10],
          [0, 0],
        ],
      );
    } else expectSame(numbers(again), numbers(text));
  });

  it('probes of an unknown array are not made up', () => {
    expect(faultOf(() => probeCsv(twoByTwo))).toMatchObject({ code: 'SCHEMA', path: 'sites.probes.positions' });
  });
});

describe('the DXF of a head', () => {
  it('is read by an independent parser: layers, arcs by their bulge, holes and names', () => {
    const drawing = new DxfParser().parseSync(headDxf(head))!;
    expect(Object.keys(drawing.tables.layer.layers)).toEqual(
      expect.arrayContaining(['OUTLINE', 'OPENINGS', 'FRAME', 'WINDOW', 'SITES', 'FASTENERS', 'HOLES', 'KEEP-OUTS']),
    );
    expect(drawing.header.$INSUNITS).toBe(4);
    const on = (layer: string) => drawing.entities.filter((entity) => entity.layer === layer);
    const [outline] = on('OUTLINE').map((entity) =>
      'vertices' in entity ? (entity.vertices as { x: number; y: number; bulge?: number }[]) : [],
    );
    expect(outline).toHaveLength(8);
    expect(Math.max(...outline.map(({ x }) => x))).toBeCloseTo(1 / 3 + 52.1234567 / 2, 6);
    expect(outline.map(({ bulge = 0 }) => bulge).filter((bulge) => bulge > 0.41 && bulge < 0.42)).toHaveLength(4);
    const holes = on('HOLES') as unknown as { radius: number; center: { x: number } }[];
    // Hole of an M2.5 screw, medium fit: 2.9 mm (ISO 273; memory).
    expect(holes.map(({ radius }) => 2 * radius)).toEqual([2.9, 2.9, 2.9, 2.9]);
    expect(on('SITES').filter(({ type }) => type === 'TEXT')).toHaveLength(4);
  });
});
