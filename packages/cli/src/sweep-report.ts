import {
  axisValues,
  type Crossing,
  type Setting,
  type SweepPlan,
  type SweepRow,
  type SweepSummary,
} from '@flathead/solver';
import { plain, um } from './format.ts';
import { amount, faultLines, figureCell, figureHeading, outcomeText } from './study-text.ts';
import { table } from './table.ts';
import type { Paint } from './terminal.ts';

/** Rows and columns of a table that a person still reads; of more, evenly chosen ones are shown. */
const LONGEST = 40;
const WIDEST = 10;

/** What `flathead sweep` prints: the variants of one parameter, the map of two, the limits they cross. */
export function sweepText(plan: SweepPlan, rows: readonly SweepRow[], summary: SweepSummary, paint: Paint): string {
  const { outcomes, parameters, crossings } = summary;
  const isMap = 'vary' in plan && plan.vary.length === 2;
  return [
    isMap ? map(plan, rows, parameters, paint) : list(rows, parameters, paint),
    ...crossings.slice(0, LONGEST).map((crossing) => crossingText(crossing)),
    [
      `${outcomes.pass} pass`,
      `${outcomes.marginal} marginal`,
      `${outcomes.fail} fail`,
      ...(outcomes.fault > 0 ? [`${outcomes.fault} could not be built or solved:`] : []),
    ].join(', '),
    ...faultLines(rows, paint),
    '',
  ].join('\n');
}

function list(rows: readonly SweepRow[], parameters: readonly string[], paint: Paint): string {
  const figures = Object.entries(rows.find((row) => row.figures !== undefined)?.figures ?? {});
  const shown = thinned(rows, LONGEST);
  return [
    table(
      [...parameters, ...figures.map(([criterion, figure]) => figureHeading(criterion, figure)), '', 'worst at'],
      shown.map((row) => [
        ...row.settings.map(settingText),
        ...figures.map(([criterion]) => {
          const figure = row.figures?.[criterion];
          return figure === undefined
            ? ''
            : figureCell(figure) + (figure.error === null ? '' : ` +- ${um(figure.error)}`);
        }),
        outcomeText(row, paint),
        row.figures?.bow === undefined ? '' : `${row.figures.bow.site}, ${row.figures.bow.case}`,
      ]),
      paint,
      [parameters.length + figures.length, parameters.length + figures.length + 1],
    ),
    ...leftOut(shown.length, rows.length, 'rows', paint),
  ].join('\n');
}

/** The bow over two parameters: the first downwards, the second across. */
function map(
  { vary }: Extract<SweepPlan, { vary: unknown }>,
  rows: readonly SweepRow[],
  [down, across]: readonly string[],
  paint: Paint,
): string {
  const [all, further] = vary.map(axisValues);
  const [lines, columns] = [thinned(all, LONGEST), thinned(further, WIDEST)];
  const byPlace = new Map(rows.map((row) => [JSON.stringify(row.settings), row]));
  return [
    `bow in um; down: ${down}, across: ${across}`,
    table(
      ['', ...columns.map(settingText)],
      lines.map((value) => [
        settingText(value),
        ...columns.map((other) => {
          const row = byPlace.get(JSON.stringify([value, other]));
          const bow = row?.figures?.bow;
          if (bow === undefined) return row === undefined ? '' : 'fault';
          return `${um(bow.value)}${{ pass: ' ', marginal: '~', fail: '!' }[row?.outcome ?? 'fail']}`;
        }),
      ]),
      paint,
    ),
    paint.dim('  ! fails, ~ marginal'),
    ...leftOut(lines.length * columns.length, all.length * further.length, 'variants', paint),
  ].join('\n');
}

function crossingText({ criterion, parameter, value, error, passes, limit, at }: Crossing): string {
  const spread = error === null ? '' : ` +- ${plain(error)} (numerical error)`;
  const other = at === undefined ? '' : ` at ${at.parameter} = ${settingText(at.value)}`;
  const unit = criterion === 'bow' || criterion === 'flatness' ? 'mm' : criterion === 'contact' ? 'N' : '1';
  return `${criterion} just passes ${amount(limit, unit)} with ${parameter} = ${digits(value)}${spread}${other}; ${passes} that it passes`;
}

function digits(value: number): string {
  return String(Number(value.toPrecision(4)));
}

function settingText(setting: Setting): string {
  return typeof setting === 'number' ? String(Number(setting.toPrecision(6))) : String(setting);
}

/** At most `most` of the items, evenly chosen, the first and the last among them. */
function thinned<T>(items: readonly T[], most: number): readonly T[] {
  if (items.length <= most) return items;
  return Array.from({ length: most }, (_, i) => items[Math.round((i * (items.length - 1)) / (most - 1))]);
}

function leftOut(shown: number, all: number, noun: string, paint: Paint): string[] {
  return shown < all ? [paint.dim(`  ${shown} of ${all} ${noun} shown; --json has all`)] : [];
}
