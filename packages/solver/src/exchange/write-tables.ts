import writeXlsxFile, { type SheetData } from 'write-excel-file/universal';
import type { HeadModel } from '../model/head-model.ts';
import type { HeadResult } from '../results/head-result.ts';
import { type Cell, guarded } from './csv-text.ts';
import { stampOf } from './stamp.ts';

interface Sheet {
  readonly name: string;
  readonly header: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

/** Cells of a sheet; a workbook holds a million rows. */
const MOST_ROWS = 1_000_000;

/**
 * Tables of a solved head as an Office Open XML workbook: what it is of, the verdict, sites, fasteners and stress of every
 * case, in mm, N and MPa. Texts that a spreadsheet could take for formulas are guarded as in CSV.
 */
export async function headXlsx(model: HeadModel, result: HeadResult): Promise<Uint8Array> {
  const sheets = [aboutSheet(model), verdictSheet(result), sitesSheet(result), fastenersSheet(model, result)];
  const all = result.cases.some(({ strength }) => strength !== null) ? [...sheets, stressSheet(result)] : sheets;
  const blob = await writeXlsxFile(
    all.map(({ name, header, rows }) => ({
      sheet: name,
      data: [header.map((value) => ({ value, fontWeight: 'bold' as const })), ...rows.slice(0, MOST_ROWS).map(cells)],
      stickyRowsCount: 1,
    })),
  ).toBlob();
  return new Uint8Array(await blob.arrayBuffer());
}

function cells(row: readonly Cell[]): SheetData[number] {
  return row.map((cell) => {
    if (cell === null || (typeof cell === 'number' && !Number.isFinite(cell))) return null;
    return typeof cell === 'number' ? { type: Number, value: cell } : { type: String, value: guarded(cell) };
  });
}

function aboutSheet(model: HeadModel): Sheet {
  const { program, version, model: name, hash } = stampOf(model);
  const rows = [
    ['program', `${program} ${version}`],
    ['model', name],
    ['model hash', hash],
    ...(model.note === undefined ? [] : [['note', model.note]]),
    ['units', 'mm, N, MPa'],
  ];
  return { name: 'About', header: ['what', 'value'], rows };
}

function verdictSheet({ verdict }: HeadResult): Sheet {
  return {
    name: 'Verdict',
    header: ['criterion', 'outcome', 'value', 'limit', 'unit', 'numerical error', 'case', 'worst at'],
    rows: [
      ...verdict.criteria.map(({ criterion, outcome, value, limit, unit, error, case: load, site }) => [
        ...[criterion, outcome, value, limit, unit, error, load, site],
      ]),
      ['overall', verdict.outcome, null, null, null, null, null, null],
      ...[verdict.sentence, ...verdict.remarks].map((sentence) => [sentence]),
    ],
  };
}

function sitesSheet({ cases }: HeadResult): Sheet {
  return {
    name: 'Sites',
    header: [
      'case',
      'site',
      'bow (mm)',
      'at x (mm)',
      'at y (mm)',
      'flatness (mm)',
      'least board contact (N)',
      'least device contact (N)',
    ],
    rows: cases.flatMap(({ name, sites }) =>
      sites.map(({ name: site, bow, at, flatness, contact }) => [
        ...[name, site, bow, at[0], at[1], flatness],
        ...[contact?.board?.minimum ?? null, contact?.device?.minimum ?? null],
      ]),
    ),
  };
}

function fastenersSheet(model: HeadModel, { cases }: HeadResult): Sheet {
  return {
    name: 'Fasteners',
    header: [
      'case',
      'fastener',
      'x (mm)',
      'y (mm)',
      'screw',
      'reaction (N)',
      'moves (mm)',
      'stiffness (N/mm)',
      'holds',
    ],
    rows: cases.flatMap(({ name, fasteners }) =>
      fasteners.map(({ name: fastener, at, reaction, w, stiffness, holds }, i) => [
        ...[name, fastener, at[0], at[1], model.fasteners[i]?.screw ?? null],
        ...[reaction, w, stiffness, holds ? 'yes' : 'no'],
      ]),
    ),
  };
}

function stressSheet({ cases }: HeadResult): Sheet {
  return {
    name: 'Stress',
    header: [
      'case',
      'part',
      'material',
      'measure',
      'stress (MPa)',
      'at x (mm)',
      'at y (mm)',
      'face',
      'near',
      'strength (MPa)',
      'factor',
      'failure probability',
    ],
    rows: cases.flatMap(({ name, strength }) =>
      (strength?.parts ?? []).map((part) => [
        ...[name, part.part, part.material, part.measure, part.stress, part.at[0], part.at[1], part.face, part.near],
        ...[part.strength, part.factor, part.failureProbability],
      ]),
    ),
  };
}
