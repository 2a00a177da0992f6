import { read, utils, type WorkSheet } from '@e965/xlsx';
import { WebIO } from '@gltf-transform/core';
import { strFromU8 } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { fieldCsv } from '../../src/exchange/field-csv.ts';
import { fastenerCsv } from '../../src/exchange/write-lists.ts';
import { headGlb, headStl } from '../../src/exchange/write-surface.ts';
import { headXlsx } from '../../src/exchange/write-tables.ts';
import { headVtu } from '../../src/exchange/write-vtu.ts';
import { VERSION } from '../../src/version.ts';
import { canReadMeshes, type MeshFile, readMesh } from './read-mesh.ts';
import { hash, model, result } from './solved-head.ts';

const { mesh, verdict } = result;
const [mounted, left] = result.cases;

/** Area of the plate, mm2: 52 x 46 with corners of 2, which are short of (4 - pi) r^2. */
const PLATE = 52 * 46 - (4 - Math.PI) * 4;

/** Signed area of the triangles of a mesh in the plane, mm2. */
function areaOf({ points, cells }: MeshFile): number {
  const twice = cells[0].nodes.map(([i, j, k]) => {
    const [a, b, c] = [points[i], points[j], points[k]];
    return (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
  });
  expect(Math.min(...twice)).toBeGreaterThan(0);
  return twice.reduce((sum, part) => sum + part, 0) / 2;
}

describe.skipIf(!canReadMeshes)('a mesh library of another language', () => {
  describe.each(['ascii', 'base64'] as const)('opens a VTU in %s', (form) => {
    let file: MeshFile;
    beforeAll(() => {
      file = readMesh(headVtu(model, result, form), '.vtu');
    });

    it('with its nodes and triangles', () => {
      expect(file.points).toEqual(Array.from(mesh.x, (x, i) => [x, mesh.y[i], 0]));
      expect(file.cells.map(({ type }) => type)).toEqual(['triangle']);
      expect(file.cells[0].nodes.flat()).toEqual([...mesh.triangles]);
      expect(areaOf(file)).toBeCloseTo(PLATE, 1);
    });

    it('with a value of each field and case at every node, a section at every triangle, and what it is of', () => {
      const wanted = result.cases.flatMap(({ name, w, deviation, strength }) => [
        [`deflection (mm): ${name}`, [...w]] as const,
        [`deviation (mm): ${name}`, [...deviation]] as const,
        [`tension (MPa): ${name}`, [...strength!.bodyTension]] as const,
      ]);
      expect(Object.keys(file.pointData)).toEqual(wanted.map(([name]) => name));
      for (const [name, values] of wanted) expect(file.pointData[name], name).toEqual(values);
      expect(file.cellData).toEqual({ section: [[...mesh.region]] });
      const words = Object.entries(file.fieldData).map(([name, codes]) => [name, String.fromCharCode(...codes)]);
      expect(words).toEqual([
        ['model', model.name],
        ['model hash', hash],
        ['flathead version', VERSION],
      ]);
    });

    it('in which the largest deviation of the probe fields is the bow that is judged', () => {
      // Fields of 4.5 x 4 about the middles of dies of 6 x 5, one left out between any two.
      const probed = file.points.map(
        ([x, y]) => Math.abs(Math.abs(x) - 6) < 2.2501 && Math.abs(Math.abs(y) - 5) < 2.0001,
      );
      const largest = (name: string) =>
        file.pointData[`deviation (mm): ${name}`].reduce(
          (worst, value, i) => (probed[i] && Math.abs(value) > Math.abs(worst) ? value : worst),
          0,
        );
      const [judged] = verdict.criteria;
      expect(judged).toMatchObject({ criterion: 'bow', case: 'mounted' });
      expect(Math.abs(largest('mounted')) / judged.value!).toBeCloseTo(1, 6);
      expect(largest('left') / left.bow.value).toBeCloseTo(1, 6);
      const [ceramic] = mounted.strength!.parts;
      expect(Math.max(...file.pointData['tension (MPa): mounted']) / ceramic.stress).toBeCloseTo(1, 2);
    });
  });

  it('opens an STL: every facet, the area of the plate, its bend to scale', () => {
    const file = readMesh(headStl(model, result, { case: 'mounted', exaggeration: 1000 }), '.stl');
    expect(file.cells.map(({ type, nodes }) => [type, nodes.length])).toEqual([
      ['triangle', mesh.triangles.length / 3],
    ]);
    expect(areaOf(file)).toBeCloseTo(PLATE, 1);
    const z = file.points.map(([, , height]) => height);
    expect(Math.max(...z)).toBeCloseTo(1000 * Math.max(...mounted.deviation), 5);
    expect(Math.min(...z)).toBeCloseTo(1000 * Math.min(...mounted.deviation), 5);
  });
});

describe('a glTF', () => {
  it('is opened by an independent library: the bent surface in metres, y up, with its deviation', async () => {
    const bytes = headGlb(model, result, { case: 'mounted', exaggeration: 200 });
    expect(strFromU8(bytes.subarray(20, 200))).toContain(`"generator":"flathead ${VERSION}, model ${hash}`);
    const document = await new WebIO().readBinary(bytes);
    const asset = document.getRoot().getAsset();
    expect(asset.extras).toMatchObject({ hash, exaggeration: 200, case: 'mounted' });
    const [primitive] = document.getRoot().listMeshes()[0].listPrimitives();
    const position = primitive.getAttribute('POSITION')!;
    expect(position.getCount()).toBe(mesh.x.length);
    expect(primitive.getIndices()!.getCount()).toBe(mesh.triangles.length);
    const { deviation } = result.cases[0];
    for (const i of [0, 17, mesh.x.length - 1]) {
      const [x, y, z] = position.getElement(i, [0, 0, 0]);
      expect([1000 * x, -1000 * z]).toEqual([expect.closeTo(mesh.x[i], 4), expect.closeTo(mesh.y[i], 4)]);
      expect(1000 * y).toBeCloseTo(200 * deviation[i], 5);
      expect(primitive.getAttribute('_DEVIATION')!.getScalar(i)).toBeCloseTo(deviation[i], 7);
      const normal = primitive.getAttribute('NORMAL')!.getElement(i, [0, 0, 0]);
      expect(Math.hypot(...normal)).toBeCloseTo(1, 5);
      expect(normal[1]).toBeGreaterThan(0);
    }
    expect(position.getMax([0, 0, 0])[0]).toBeCloseTo(Math.max(...mesh.x) / 1000, 6);
  });
});

type Row = readonly (string | number | null)[];

/** Cells of a sheet row by row as a spreadsheet takes them, none of them a formula. */
function rowsOf(sheet: WorkSheet): Row[] {
  const cells = Object.entries(sheet).filter(([place]) => !place.startsWith('!'));
  for (const [place, { t, f }] of cells) expect([place, f, 'ns'.includes(t)]).toEqual([place, undefined, true]);
  return utils.sheet_to_json<Row>(sheet, { header: 1, defval: null, raw: true });
}

/** Rows begin as wanted, numbers to some digits behind the point or else exactly; cells beyond those wanted are not looked at. */
function expectRows(rows: readonly Row[], wanted: readonly Row[], digits?: number): void {
  expect(rows.length).toBe(wanted.length);
  for (const [i, row] of wanted.entries())
    for (const [k, value] of row.entries())
      expect(rows[i][k], `row ${i}, column ${k}`).toEqual(
        typeof value === 'number' && digits !== undefined ? expect.closeTo(value, digits) : value,
      );
}

describe('a spreadsheet program', () => {
  it('opens the tables: texts as texts, numbers as numbers, no formulas', async () => {
    const { SheetNames: names, Sheets: sheets } = read(await headXlsx(model, result), { cellFormula: true });
    expect(names).toEqual(['About', 'Verdict', 'Sites', 'Fasteners', 'Stress']);
    const [about, judged, sites, fasteners, stress] = names.map((name) => rowsOf(sheets[name]));
    expectRows(about, [
      ['what', 'value'],
      ['program', `flathead ${VERSION}`],
      ['model', `'${model.name}`],
      ['model hash', hash],
      ['units', 'mm, N, MPa'],
    ]);
    const [bow] = verdict.criteria;
    expectRows(judged, [
      ['criterion', 'outcome', 'value', 'limit', 'unit', 'numerical error', 'case', 'worst at'],
      ['bow', 'pass', bow.value, 0.03, 'mm', bow.error, 'mounted', bow.site],
      ['overall', 'pass'],
      [verdict.sentence],
    ]);
    expectRows(sites, [
      ['case', 'site', 'bow (mm)', 'at x (mm)', 'at y (mm)', 'flatness (mm)'],
      ...result.cases.flatMap((solved) =>
        solved.sites.map(({ name, bow: value, at, flatness }) => [solved.name, name, value, ...at, flatness]),
      ),
    ]);
    expectRows(fasteners, [
      ['case', 'fastener', 'x (mm)', 'y (mm)', 'screw', 'reaction (N)', 'moves (mm)', 'stiffness (N/mm)', 'holds'],
      ...result.cases.flatMap((solved) =>
        solved.fasteners.map(({ name, at, reaction, w, stiffness }) => [
          ...[solved.name, name.replace(/^\+/, "'+"), ...at, 'M2.5', reaction, w, stiffness, 'yes'],
        ]),
      ),
    ]);
    expectRows(
      stress.map((row) => row.slice(0, 5)),
      [
        ['case', 'part', 'material', 'measure', 'stress (MPa)'],
        ...result.cases.flatMap((solved) =>
          solved.strength!.parts.map((part) => [solved.name, part.part, part.material, part.measure, part.stress]),
        ),
      ],
    );
  });

  it('opens fastener tables and fields as CSV likewise', () => {
    const opened = (text: string) => {
      const { Sheets: sheets, SheetNames: names } = read(text, { type: 'string', cellFormula: true });
      return rowsOf(sheets[names[0]]).filter(([first]) => !String(first).startsWith('#'));
    };
    expectRows(
      opened(fastenerCsv(model)),
      [
        ['name', 'x (mm)', 'y (mm)', 'screw'],
        ...model.fasteners.map(({ name, at, screw = null }) => [name.replace(/^\+/, "'+"), ...at, screw]),
      ],
      9,
    );
    const at = [0, 17, 400].map((i) => [mesh.x[i], mesh.y[i]] as const);
    expectRows(
      opened(fieldCsv(model, result, { case: 'left', at })),
      [
        ['x (mm)', 'y (mm)', 'deflection (mm)', 'deviation (mm)', 'tension (MPa)'],
        ...[0, 17, 400].map((i) => [
          ...[mesh.x[i], mesh.y[i], left.w[i], left.deviation[i], left.strength!.bodyTension[i]],
        ]),
      ],
      9,
    );
  });
});
