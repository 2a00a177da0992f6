import { Fault, type SitesRow, type SitesSummary, sitesStudy } from '@flathead/solver';
import type { Command } from 'commander';
import { plain } from './format.ts';
import { EXIT } from './refusal.ts';
import { numberOf, readStudyInput, runStudy, type StudyOptions, several, studyCommand } from './study-run.ts';
import { faultLines, figureCell, outcomeText } from './study-text.ts';
import { table } from './table.ts';
import type { Paint, Terminal } from './terminal.ts';

interface Options extends StudyOptions {
  readonly pattern?: string[];
  readonly wafer?: string;
  readonly fit?: string;
}

/** Adds `flathead sites`. */
export function addSites(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  studyCommand(program, 'sites', 'compare site patterns: row length, bow, touchdowns over a wafer')
    .option(
      '--pattern <columns x rows / skip>',
      'such as 8x1/3,0: eight in a row, three dies skipped; once for each',
      several,
    )
    .option('--wafer <diameter,edge>', 'mm, with ",corner" where dies meet at its centre; 200,3 if left out')
    .option('--fit <kind>', 'follow: outlines and fasteners follow the pattern; keep: they stay')
    .action(async (file: string, options: Options) => ended(await sites(file, options, terminal)));
}

async function sites(file: string, options: Options, terminal: Terminal): Promise<number> {
  const { pattern, wafer = '200,3', fit } = options;
  const fromOptions = (): object => {
    const [diameter = '', edge = '', centre] = wafer.split(',');
    return {
      patterns: (pattern ?? []).map(readPattern),
      wafer: {
        diameter: numberOf(diameter, '--wafer'),
        edge: numberOf(edge, '--wafer'),
        ...(centre === undefined ? {} : { centre: centre.trim() }),
      },
      ...(fit === undefined ? {} : { fit }),
    };
  };
  const example = '--pattern 8x1/3,0 --pattern 8x1/1,0';
  const { model, plan } = await readStudyInput(file, options, pattern !== undefined, fromOptions, example, terminal);
  return runStudy(sitesStudy(model, plan), model, options, { text: sitesText, code: () => EXIT.pass }, terminal);
}

function readPattern(text: string): object {
  const [, columns, rows, x, y] = /^\s*(\d+)x(\d+)\/(\d+),(\d+)\s*$/.exec(text) ?? [];
  if (y === undefined)
    throw new Fault(
      'USAGE',
      `"${text}" is no site pattern. Write columns x rows / skipped dies, such as 8x1/3,0.`,
      '',
      {
        value: text,
        expected: 'such as 8x1/3,0',
      },
    );
  return { columns: Number(columns), rows: Number(rows), skip: [Number(x), Number(y)] };
}

function sitesText(rows: readonly SitesRow[], { fewest }: SitesSummary, paint: Paint): string {
  const best = rows.find(({ index }) => index === fewest);
  return [
    table(
      ['sites', 'skip', 'length, mm', 'bow, um', '', 'touchdowns', 'at least', 'dies', 'lost sites', 'efficiency'],
      rows.map((row) => [
        named(row),
        row.skip.join(', '),
        row.length.map((side) => plain(side)).join(' x '),
        row.figures?.bow === undefined ? '' : figureCell(row.figures.bow),
        outcomeText(row, paint),
        ...(row.stepping === undefined
          ? ['', '', '', '', '']
          : [
              String(row.stepping.touchdowns),
              String(row.stepping.least),
              String(row.stepping.dies),
              String(row.stepping.lost),
              `${(100 * row.stepping.efficiency).toFixed(1)} %`,
            ]),
      ]),
      paint,
      [4],
    ),
    '',
    'Touchdowns are those of a plan that tests every die once; a prober may step otherwise.',
    ...(best === undefined ? [] : [`Fewest touchdowns without failing: ${named(best)}, skip ${best.skip.join(', ')}.`]),
    ...faultLines(rows, paint),
    '',
  ].join('\n');
}

function named({ columns, rows }: SitesRow): string {
  return `${columns} x ${rows}`;
}
