import type { HeadResult } from '@flathead/solver';
import { micrometreDigits, signedMicrometres } from '../format/number.ts';
import type { NumberRows } from '../format/number-rows.ts';
import { caseChunks, FEW_CASES, worstOfEach } from './case-columns.ts';
import { coordinate, NONE } from './cells.ts';

/** Sites beyond this are left out, the smallest bows first. */
const MOST_SITES = 400;

/** Bow of every site in every case, µm, and its own flatness in the worst; several tables where the cases need them. */
export function bowRows({ cases, sites }: HeadResult): { readonly tables: NumberRows[]; readonly left: number } {
  const shown = worstOfEach(cases);
  const worst = cases.reduce((a, b) => (Math.abs(b.bow.value) > Math.abs(a.bow.value) ? b : a));
  const size = (i: number) => Math.max(...shown.map((result) => Math.abs(result.sites[i].bow)));
  const order = sites.map((_, i) => i);
  const kept =
    sites.length > MOST_SITES
      ? order
          .toSorted((a, b) => size(b) - size(a))
          .slice(0, MOST_SITES)
          .sort((a, b) => a - b)
      : order;
  const tables = caseChunks(shown).map((part, k) => ({
    columns: [
      ...['Site', 'x, mm', 'y, mm', ...part.map(({ name }) => name)],
      ...(k === 0 ? ['Flatness of its own, µm'] : []),
    ],
    rows: kept.map((i) => [
      ...[sites[i].name, coordinate(sites[i].centre[0]), coordinate(sites[i].centre[1])],
      ...part.map((result) => signedMicrometres(result.sites[i].bow)),
      ...(k === 0 ? [micrometreDigits(worst.sites[i].flatness)] : []),
    ]),
  }));
  return { tables, left: sites.length - kept.length };
}

/** Bow and contact force side by side, where there is room for both; else `null`. */
export function siteRows(result: HeadResult): NumberRows | null {
  const { tables, left } = bowRows(result);
  const contact = contactRows(result);
  const few = worstOfEach(result.cases).length <= FEW_CASES;
  if (contact === null || tables.length > 1 || left > 0 || !few) return null;
  return {
    columns: [...tables[0].columns, ...contact.columns.slice(1)],
    rows: tables[0].rows.map((row, i) => [
      ...row,
      ...contact.rows[i].slice(1).map((cell) => cell.replace(/ \(.*\)$/, '')),
    ]),
  };
}

/** Least contact force of every site over all cases, N; `null` where the model does not give the spring rate. */
export function contactRows({ cases, sites }: HeadResult): NumberRows | null {
  if (cases.every((result) => result.sites.every(({ contact }) => contact === undefined))) return null;
  const least = (i: number, end: 'board' | 'device'): string => {
    const known = cases.flatMap(({ name, sites: results }) => {
      const force = results[i].contact?.[end];
      return force ? [{ name, force }] : [];
    });
    if (known.length === 0) return NONE;
    const { name, force } = known.reduce((a, b) => (b.force.minimum < a.force.minimum ? b : a));
    return `${contactDigits(force.minimum)} (${name})`;
  };
  return {
    columns: ['Site', 'Least at the board, N', 'Least at the device, N'],
    rows: sites.slice(0, MOST_SITES).map(({ name }, i) => [name, least(i, 'board'), least(i, 'device')]),
  };
}

/** Forces of one probe are small. */
function contactDigits(force: number): string {
  return force.toFixed(force >= 1 ? 2 : 3);
}
