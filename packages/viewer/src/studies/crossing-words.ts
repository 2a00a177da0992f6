import type { Crossing, SweepRow } from '@flathead/solver';
import { fieldText, micrometreDigits } from '../format/number.ts';
import type { StudyParameter } from './parameters.ts';
import { inSentence, settingText, settingWords } from './setting-text.ts';

/**
 * A value that passes even with its numerical error, as it is shown: to no more digits than the error leaves, three at
 * most, on the side that passes. 5.088 with an error of 0.02 is 5.11 and more.
 *
 * @param error of the value; `null` = not known
 */
export function passingValue(value: number, error: number | null, passes: 'above' | 'below'): number {
  const sign = passes === 'above' ? 1 : -1;
  return outward(value + sign * Math.abs(error ?? 0), stepOf(value, error), sign);
}

/** The axis that a crossing lies on. */
function crossedAxis({ at }: Crossing, axes: readonly StudyParameter[]): StudyParameter {
  return axes.find(({ label }) => label !== at?.parameter) ?? axes[0];
}

/** `Body thickness of 5.11 mm or more passes; the limit is met at 5.09 ±0.02 mm.` */
export function crossingWords(crossing: Crossing, axes: readonly StudyParameter[]): string {
  const { criterion, at, passes } = crossing;
  const along = crossedAxis(crossing, axes);
  const { label, unit, scale } = along;
  const [value, error] = [crossing.value * scale, crossing.error === null ? null : Math.abs(crossing.error) * scale];
  const other = at && axes.find((axis) => axis.label === at.parameter);
  const where = at && other ? `, at ${inSentence(at.parameter)} ${settingText(at.value, other)}` : '';
  const what = criterion === 'bow' ? '' : ` by ${criterion}`;
  const step = stepOf(value, error);
  const met = fieldText(Number((Math.round(value / step) * step).toPrecision(9)));
  const known =
    error === null ? '' : `; the limit is met at ${met} ±${fieldText(Number(error.toPrecision(1)))} ${unit}`;
  const enough = fieldText(passingValue(value, error, passes));
  return `${label} of ${enough} ${unit} or ${passes === 'above' ? 'more' : 'less'} passes${what}${where}${known}.`;
}

/** Settings of the head that a crossing stands for, rounded as it is shown. */
export function crossingSettings(crossing: Crossing, axes: readonly StudyParameter[]): SweepRow['settings'] {
  const along = crossedAxis(crossing, axes);
  const { scale } = along;
  const value = passingValue(
    crossing.value * scale,
    crossing.error === null ? null : crossing.error * scale,
    crossing.passes,
  );
  return axes.map((axis) =>
    axis === along || crossing.at === undefined ? Number((value / scale).toPrecision(12)) : crossing.at.value,
  );
}

/** What a range without a crossing is like, and where it comes nearest to the limit. */
export function uncrossedWords(rows: readonly SweepRow[], limit: number, axes: readonly StudyParameter[]): string {
  const solved = rows.flatMap((row) => (row.figures?.bow === undefined ? [] : [{ row, bow: row.figures.bow.value }]));
  if (solved.length === 0) return 'No value of this range gives an answer.';
  const said = `the bow limit of ${micrometreDigits(limit)}\u00a0µm`;
  const nearest = solved.reduce((a, b) => (Math.abs(b.bow - limit) < Math.abs(a.bow - limit) ? b : a));
  const where = `${micrometreDigits(nearest.bow)}\u00a0µm at ${settingWords(nearest.row.settings, axes)}`;
  if (solved.every(({ bow }) => bow > limit))
    return `All of this range is over ${said}. Nearest to it: ${where}${isEnd(nearest.row, rows) ? '; look beyond that' : ''}.`;
  if (solved.every(({ bow }) => bow <= limit)) return `All of this range is within ${said}. Nearest to it: ${where}.`;
  return 'No limit is crossed between two values that have an answer.';
}

/** Whether a row stands at either end of a range of one number. */
function isEnd(row: SweepRow, rows: readonly SweepRow[]): boolean {
  const all = rows.map(({ settings: [first] }) => Number(first));
  return row.settings.length === 1 && [Math.min(...all), Math.max(...all)].includes(Number(row.settings[0]));
}

/** What one in the last digit is: that of the error, and of three figures at most. */
function stepOf(value: number, error: number | null): number {
  const decade = (size: number): number => 10 ** Math.floor(Math.log10(size));
  const figures = value === 0 ? 0 : decade(Math.abs(value)) / 100;
  return Math.max(figures, error === null || error === 0 ? 0 : decade(Math.abs(error))) || 1;
}

function outward(value: number, step: number, sign: 1 | -1): number {
  const steps = Number((value / step).toPrecision(9));
  return Number(((sign > 0 ? Math.ceil(steps) : Math.floor(steps)) * step).toPrecision(9));
}
