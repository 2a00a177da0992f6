import type { Wanted } from './column.ts';

/** Titles of a coordinate; # stands for its letter. */
const COORDINATE = [
  '#',
  'pos#',
  '#pos',
  'position#',
  '#position',
  '#coord',
  'coord#',
  '#coordinate',
  '#loc',
  'center#',
  'centre#',
  '#center',
  '#centre',
  'mid#',
  '#nom',
  '#nominal',
  'nom#',
  'nominal#',
  'probe#',
  'probepos#',
  'pin#',
  'tip#',
  'location#',
  '#location',
  '#koordinate',
  'koordinate#',
];

const FORCE = [
  'preload',
  'force',
  'load',
  'f',
  'probeforce',
  'springforce',
  'boardforce',
  'preloadforce',
  'kraft',
  'vorspannung',
];

const SITE = ['site', 'sitename', 'siteid', 'siteno', 'dut', 'die', 'device', 'group', 'block'];

/** The column of a coordinate. */
export function coordinate(axis: 'x' | 'y'): Wanted {
  return { key: axis, names: COORDINATE.map((name) => name.replace('#', axis)), quantity: 'length', required: true };
}

/** Of a probe list. */
export const PROBE_COLUMNS: readonly Wanted[] = [
  coordinate('x'),
  coordinate('y'),
  { key: 'force', names: FORCE, quantity: 'force', required: false },
  { key: 'site', names: SITE, quantity: null, required: false },
];
