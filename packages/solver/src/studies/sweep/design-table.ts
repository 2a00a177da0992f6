import papa from 'papaparse';
import { Fault } from '../../fault/fault.ts';
import type { Setting } from '../parameter.ts';
import { readSetting } from './axis-values.ts';
import type { SweepPlan } from './plan.ts';

/**
 * Plan of a design of experiments from a table: CSV, tabs or semicolons between values; the first row holds paths into the
 * head model, each further row one variant. Lines that begin with # are remarks.
 *
 * @throws Fault SCHEMA that says which row is wrong
 */
export function readDesign(text: string): SweepPlan {
  const { data, errors } = papa.parse<string[]>(text.replace(/^\uFEFF/, ''), {
    skipEmptyLines: 'greedy',
    comments: '#',
    delimitersToGuess: [',', ';', '\t'],
  });
  const [flaw] = errors.filter(({ type }) => type !== 'Delimiter');
  if (flaw !== undefined) return refuse(`is not a table: ${flaw.message}`, (flaw.row ?? 0) + 1);
  const [headings, ...rows] = data;
  if (headings === undefined || rows.length === 0) return refuse('has no rows below its headings', 1);
  const paths = headings.map((heading) => heading.trim());
  const settings = rows.map((row, i): Setting[] => {
    if (row.length !== paths.length) refuse(`has ${row.length} values, but there are ${paths.length} headings`, i + 2);
    return row.map((value, k) =>
      value.trim() === '' ? refuse(`has no value for ${paths[k]}`, i + 2) : readSetting(value),
    );
  });
  return {
    design: { parameters: paths.map((path) => ({ path: path.split('+').map((one) => one.trim()) })), rows: settings },
  };
}

/** @param row from 1, headings counted, remarks and empty lines not */
function refuse(what: string, row: number): never {
  throw new Fault(
    'SCHEMA',
    `Row ${row} of the design ${what}. The first row holds paths such as body.thickness, every further row a value for each.`,
    `row ${row}`,
    { row },
  );
}
