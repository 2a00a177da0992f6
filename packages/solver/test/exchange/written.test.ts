import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { strFromU8 } from 'fflate';
import { describe, expect, it } from 'vitest';
import { fieldCsv, readPoints } from '../../src/exchange/field-csv.ts';
import { isoRings } from '../../src/exchange/iso-rings.ts';
import { verdictRecord, verdictSchema } from '../../src/exchange/verdict-record.ts';
import { headSvg } from '../../src/exchange/write-picture.ts';
import { headStl } from '../../src/exchange/write-surface.ts';
import { headVtu } from '../../src/exchange/write-vtu.ts';
import { barycentric, locate, locator } from '../../src/mesh/locate.ts';
import { VERSION } from '../../src/version.ts';
import { faultOf } from '../model/fault-of.ts';
import { hash, model, result } from './solved-head.ts';

const { mesh } = result;

describe('a VTU', () => {
  it.each(['ascii', 'base64'] as const)('in %s obeys the format as an independent XML parser sees it', (form) => {
    const text = headVtu(model, result, form);
    expect(XMLValidator.validate(text)).toBe(true);
    const { VTKFile: file } = new XMLParser({
      ignoreAttributes: false,
      attributeNamePrefix: '',
      parseTagValue: false,
      isArray: (name: string) => name === 'DataArray',
    }).parse(text);
    expect(file).toMatchObject({ type: 'UnstructuredGrid', byte_order: 'LittleEndian', header_type: 'UInt32' });
    const { Piece: piece, FieldData: about } = file.UnstructuredGrid;
    const n = Number(piece.NumberOfPoints);
    const cells = Number(piece.NumberOfCells);
    expect([n, cells]).toEqual([mesh.x.length, mesh.triangles.length / 3]);
    type DataArray = { type: string; Name: string; format: string; '#text': string };
    const values = ({ type, format, '#text': body }: DataArray): number[] => {
      if (format === 'ascii') return body.split(/\s+/).map(Number);
      const bytes = Buffer.from(body, 'base64');
      // The first four bytes are the length of the rest.
      expect(bytes.readUInt32LE(0)).toBe(bytes.length - 4);
      const width = { Float64: 8, Int32: 4, UInt8: 1 }[type]!;
      return Array.from({ length: (bytes.length - 4) / width }, (_, i) => {
        const at = 4 + width * i;
        return type === 'Float64' ? bytes.readDoubleLE(at) : type === 'Int32' ? bytes.readInt32LE(at) : bytes[at];
      });
    };
    const [points] = piece.Points.DataArray.map(values);
    expect(points).toEqual(Array.from(mesh.x).flatMap((x, i) => [x, mesh.y[i], 0]));
    const named = (list: DataArray[], name: string) => values(list.find((array) => array.Name === name)!);
    const corners = named(piece.Cells.DataArray, 'connectivity');
    const offsets = named(piece.Cells.DataArray, 'offsets');
    expect(offsets).toEqual(offsets.map((_, t) => 3 * t + 3));
    expect(corners).toHaveLength(3 * cells);
    expect(Math.max(...corners)).toBeLessThan(n);
    expect(new Set(named(piece.Cells.DataArray, 'types'))).toEqual(new Set([5]));
    const fields: DataArray[] = piece.PointData.DataArray;
    expect(fields.map(({ Name }) => Name)).toEqual(
      ['mounted', 'left'].flatMap((name) => [
        `deflection (mm): ${name}`,
        `deviation (mm): ${name}`,
        `tension (MPa): ${name}`,
      ]),
    );
    expect(named(fields, 'deviation (mm): left')).toEqual([...result.cases[1].deviation]);
    // Numbers as well: readers that know no arrays of strings refuse the file for one.
    expect(new Set(about.DataArray.map(({ type }: DataArray) => type))).toEqual(new Set(['UInt8']));
    const words = about.DataArray.map(({ '#text': codes }: DataArray) =>
      String.fromCharCode(...codes.split(' ').map(Number)),
    );
    expect(words).toEqual([model.name, hash, VERSION]);
  });
});

describe('an STL', () => {
  it('has a facet of 50 bytes for each triangle, and the area of the plate', () => {
    const bytes = headStl(model, result, { exaggeration: 1 });
    const view = new DataView(bytes.buffer);
    const facets = view.getUint32(80, true);
    expect(facets).toBe(mesh.triangles.length / 3);
    expect(bytes).toHaveLength(84 + 50 * facets);
    const header = strFromU8(bytes.subarray(0, 80));
    expect(header).toMatch(/^flathead .*model [0-9a-f]{12}/);
    let area = 0;
    for (let t = 0; t < facets; t++) {
      const float = (k: number) => view.getFloat32(84 + 50 * t + 4 * k, true);
      const [a, b, c] = [3, 6, 9].map((k) => [float(k), float(k + 1)]);
      area += ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2;
      expect(float(2)).toBeGreaterThan(0.99);
    }
    // 52 x 46 with corners of 2: less (4 - pi) r^2.
    expect(area).toBeCloseTo(52 * 46 - (4 - Math.PI) * 4, 1);
  });
});

describe('fields as CSV', () => {
  it('are linear between the nodes, on a grid about the origin', () => {
    const lines = fieldCsv(model, result, { step: 5, case: 'mounted' }).split('\r\n');
    expect(lines[0]).toMatch(new RegExp(`^# flathead ${VERSION}, model ${hash}`));
    const start = lines.findIndex((line) => line.startsWith('x (mm)'));
    const rows = lines.slice(start + 1, -1).map((line) => line.split(',').map(Number));
    expect(rows.length).toBeGreaterThan(80);
    const places = locator(mesh);
    for (const [x, y, w] of rows) {
      expect([x % 5, y % 5].map(Math.abs)).toEqual([0, 0]);
      const t = locate(places, x, y);
      const share = barycentric(mesh, t, x, y);
      const corners = share.map((part, k) => part * result.cases[0].w[mesh.triangles[3 * t + k]]);
      expect(w).toBeCloseTo(corners[0] + corners[1] + corners[2], 8);
    }
  });

  it('keep the lines of points that are given, empty off the head', () => {
    const { read } = readPoints('x,y\n0,0\n100,0\n3.5,-2');
    const rows = fieldCsv(model, result, { at: read }).trimEnd().split('\r\n').slice(-3);
    expect(rows[1]).toBe('100,0,,,');
    expect(rows[2]).toMatch(/^3\.5,-2,[\d.e-]+,[\d.e-]+,[\d.e-]+$/);
  });

  it('are refused for a case or a step that makes no sense', () => {
    expect(faultOf(() => fieldCsv(model, result, { case: 'mountd' })).message).toMatch(/Did you mean "mounted"/);
    expect(faultOf(() => fieldCsv(model, result, { step: 0.001 }))).toMatchObject({ code: 'TOO_LARGE' });
    expect(faultOf(() => fieldCsv(model, result, { step: 0 }))).toMatchObject({ code: 'OUT_OF_RANGE' });
  });
});

describe('a picture', () => {
  it('is sound XML with its model, its fasteners, and the hatch only beyond the limit', () => {
    const text = headSvg(model, result);
    expect(XMLValidator.validate(text)).toBe(true);
    expect(text).toContain(hash);
    expect(text.match(/<circle/g)).toHaveLength(4);
    expect(text).not.toMatch(/<path d="[^"]+" fill="url\(#beyond\)"/);
    const tight = { ...model, limits: { bow: Math.abs(result.cases[0].bow.value) / 2 } };
    expect(headSvg(tight, result)).toMatch(/<path d="[^"]+" fill="url\(#beyond\)"/);
  });

  it('has bands by exact contours: the part of a plane above a level, by its area', () => {
    // w = x over the unit square in four triangles about its centre.
    const square = {
      x: Float64Array.of(0, 1, 1, 0, 0.5),
      y: Float64Array.of(0, 0, 1, 1, 0.5),
      triangles: Uint32Array.of(0, 1, 4, 1, 2, 4, 2, 3, 4, 3, 0, 4),
    };
    const areaOf = (ring: readonly (readonly [number, number])[]) =>
      ring.reduce((sum, [x, y], i) => {
        const [u, v] = ring[(i + 1) % ring.length];
        return sum + (x * v - u * y) / 2;
      }, 0);
    for (const level of [0.2, 0.5, 0.7]) {
      const rings = isoRings(square, square.x, level);
      expect(rings).toHaveLength(1);
      expect(areaOf(rings[0])).toBeCloseTo(1 - level, 12);
    }
    // A dip in the middle leaves a hole that goes round the other way: |side| 1/2 at half the depth.
    const rings = isoRings(square, Float64Array.of(1, 1, 1, 1, 0), 0.5);
    expect(rings.map(areaOf).sort()).toEqual([expect.closeTo(-0.25, 12), expect.closeTo(1, 12)]);
  });
});

describe('a verdict file', () => {
  it('says what was judged, of which model and by which version', () => {
    const record = verdictRecord(model, result);
    expect(record).toMatchObject({
      verdict: 1,
      version: VERSION,
      model: { name: model.name, hash },
      outcome: result.verdict.outcome,
    });
    expect(record.cases.map(({ name }) => name)).toEqual(['mounted', 'left']);
    expect(record.cases[0].bow.value).toBe(result.cases[0].bow.value);
    expect(JSON.parse(JSON.stringify(record))).toEqual(record);
    const { properties, required } = Reflect.get(verdictSchema(), '$defs').Verdict;
    expect(Object.keys(record).sort()).toEqual(Object.keys(properties).sort());
    expect(required).toEqual(expect.arrayContaining(['outcome', 'model', 'criteria', 'cases']));
  });
});
