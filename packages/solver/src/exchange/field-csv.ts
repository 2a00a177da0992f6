import { Fault } from '../fault/fault.ts';
import { barycentric, locate, locator } from '../mesh/locate.ts';
import type { HeadModel } from '../model/head-model.ts';
import type { HeadResult } from '../results/head-result.ts';
import { caseOf, fieldsOf } from './case-fields.ts';
import { type Cell, csvText } from './csv-text.ts';
import type { FileContent } from './file-text.ts';
import { type ListOptions, readList } from './points-list.ts';
import { coordinate } from './probe-columns.ts';
import { extentsOf, type Reading } from './reading.ts';
import { stampLine } from './stamp.ts';

export interface FieldCsvOptions {
  /** The case with the largest bow if left out. */
  readonly case?: string | undefined;
  /** Points of a grid over the head, mm apart. */
  readonly step?: number | undefined;
  /** Points to write instead of a grid, mm. */
  readonly at?: readonly (readonly [number, number])[] | undefined;
}

const MOST_POINTS = 1_000_000;
const [STEP, LEAST, MOST] = [1, 1e-3, 1e3];

/**
 * Deflection and stress of a case as CSV, on a grid about the origin or at given points: linear between the nodes of
 * the mesh. Given points off the head keep their line with empty values; grid points off it are left out.
 *
 * @throws Fault SCHEMA, OUT_OF_RANGE or TOO_LARGE
 */
export function fieldCsv(model: HeadModel, result: HeadResult, options: FieldCsvOptions = {}): string {
  const solved = caseOf(result, options.case);
  const fields = fieldsOf(solved);
  const { mesh } = result;
  const places = locator(mesh);
  const points = options.at ?? grid(result, options.step ?? STEP);
  const rows = points.flatMap(([x, y]): Cell[][] => {
    const t = locate(places, x, y);
    if (t < 0) return options.at === undefined ? [] : [[x, y, ...fields.map(() => null)]];
    const share = barycentric(mesh, t, x, y);
    const at = (values: Float64Array) =>
      share.reduce((sum, part, corner) => sum + part * values[mesh.triangles[3 * t + corner]], 0);
    return [[x, y, ...fields.map(({ values }) => at(values))]];
  });
  return csvText(
    [stampLine(model), `case ${solved.name}`, ...fields.map(({ name, meaning }) => `${name}: ${meaning}`)],
    ['x (mm)', 'y (mm)', ...fields.map(({ name, unit }) => `${name} (${unit})`)],
    rows,
  );
}

/** Points as CSV text or workbook, x and y: where fields are wanted. @throws Fault UNREADABLE, USAGE or TOO_LARGE */
export function readPoints(
  content: FileContent,
  options: ListOptions = {},
): Reading<readonly (readonly [number, number])[]> {
  const { rows, units, guesses, dropped } = readList(
    content,
    [coordinate('x'), coordinate('y')],
    ['x', 'y'],
    options,
    'list of points',
  );
  const points = rows.map(({ numbers: { x, y } }) => [x, y] as const);
  const counts = { points: points.length, dropped: dropped.length };
  return { read: points, preview: { counts, extents: extentsOf(points), layers: [], units, guesses, dropped } };
}

function grid({ mesh: { x, y } }: HeadResult, step: number): [number, number][] {
  if (!(step >= LEAST && step <= MOST))
    throw new Fault('OUT_OF_RANGE', `The step of the grid is ${step} mm; use ${LEAST} to ${MOST} mm.`, 'step', {
      value: step,
    });
  const box = extentsOf(Array.from(x, (value, i) => [value, y[i]] as const))!;
  const range = (axis: 0 | 1) => [Math.ceil(box.min[axis] / step - 1e-9), Math.floor(box.max[axis] / step + 1e-9)];
  const [[i0, i1], [j0, j1]] = [range(0), range(1)];
  const [columns, rows] = [i1 - i0 + 1, j1 - j0 + 1];
  if (columns * rows > MOST_POINTS)
    throw new Fault(
      'TOO_LARGE',
      `A step of ${step} mm gives ${columns * rows} points; at most ${MOST_POINTS} are written.`,
      'step',
      {
        value: step,
      },
    );
  return Array.from({ length: columns * rows }, (_, k) => [
    (i0 + (k % columns)) * step,
    (j1 - Math.floor(k / columns)) * step,
  ]);
}
