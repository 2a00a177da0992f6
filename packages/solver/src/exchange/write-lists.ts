import { Fault } from '../fault/fault.ts';
import { siteLayout } from '../layout/sites.ts';
import type { HeadModel } from '../model/head-model.ts';
import { screws } from '../model/screws.ts';
import { siteProbes } from '../model/site-probes.ts';
import { csvText } from './csv-text.ts';
import { stampLine } from './stamp.ts';

/** Fastener table for the board as CSV, mm: places, screws with their holes and heads, heights of their seats. */
export function fastenerCsv(model: HeadModel): string {
  const header = ['name', 'x (mm)', 'y (mm)', 'screw', 'hole (mm)', 'head (mm)', 'height (mm)'];
  const rows = model.fasteners.map(({ name, at: [x, y], screw = null, height = 0 }) => {
    const size = screw !== null && Object.hasOwn(screws, screw) ? screws[screw] : null;
    return [name, x, y, screw, size?.hole ?? null, size?.head ?? null, height];
  });
  return csvText([stampLine(model)], header, rows);
}

/**
 * Probe list as CSV, mm and N: one line for each probe, those of a field in the array of its holes.
 *
 * @throws Fault SCHEMA when the model neither lists its probes nor gives an array that they fill
 */
export function probeCsv(model: HeadModel): string {
  const sites = siteLayout(model.sites);
  const probes = siteProbes(model.sites, sites);
  const rows = sites.flatMap(({ name, centre, field }, i) => {
    const { count, points, preload } = probes[i];
    const listed =
      points ?? arrayIn(model, count, field).map(([x, y]) => [centre[0] + x, centre[1] + y, preload / count]);
    return listed.map(([x, y, force], k) => [name, k + 1, x, y, force]);
  });
  return csvText([stampLine(model)], ['site', 'probe', 'x (mm)', 'y (mm)', 'preload (N)'], rows);
}

/** Places of a square array that fills a field, row by row from the far side. */
function arrayIn(model: HeadModel, count: number, [width, height]: readonly [number, number]): [number, number][] {
  const { holes } = model.sites.probes;
  const columns = holes === undefined ? 0 : Math.round(width / holes.pitch);
  const rows = holes === undefined ? 0 : Math.round(height / holes.pitch);
  if (holes === undefined || holes.pattern !== 'square' || (holes.angle ?? 0) % 90 !== 0 || columns * rows !== count)
    throw new Fault(
      'SCHEMA',
      `The head does not say where its ${count} probes of a site stand: it lists no positions, and no square array of holes fills the field with as many. Import a probe list as points first.`,
      'sites.probes.positions',
      { value: count },
    );
  const { pitch } = holes;
  return Array.from({ length: count }, (_, i) => [
    ((i % columns) - (columns - 1) / 2) * pitch,
    ((rows - 1) / 2 - Math.floor(i / columns)) * pitch,
  ]);
}
