import type { HeadDraft } from '@flathead/solver';

/** Something to choose that fills in several answers. */
export interface Preset {
  readonly label: string;
  /** What it is like. */
  readonly note?: string;
  fill(draft: HeadDraft): HeadDraft;
}

const pattern = (rows: number, columns: number): Preset => ({
  label: `${rows} × ${columns}`,
  fill: (draft) => ({ ...draft, rows, columns }),
});

export const PATTERNS: readonly Preset[] = [
  pattern(1, 4),
  pattern(1, 8),
  pattern(2, 2),
  pattern(2, 3),
  pattern(2, 4),
  pattern(3, 3),
  pattern(4, 4),
];

/** Orders of size as they are common practice, no source: the data of the probe go before them. */
const probe = (label: string, count: number, pitch: number, preload: number, rate: number): Preset => ({
  label,
  note: `${count} at ${pitch} mm, ${preload} N`,
  fill: (draft) => ({ ...draft, probes: { count, pitch, preload, touchdown: 2 * preload, rate } }),
});

export const PROBES: readonly Preset[] = [
  probe('Fine', 300, 0.3, 0.05, 0.4),
  probe('Usual', 200, 0.4, 0.08, 0.5),
  probe('Strong', 64, 1, 0.4, 1),
];

const body = (label: string, material: string, thickness: number): Preset => ({
  label,
  note: `${thickness} mm`,
  fill: (draft) => ({ ...draft, body: { material, thickness } }),
});

export const BODIES: readonly Preset[] = [
  body('Alumina 96 %', 'alumina-96', 5),
  body('Alumina 99.5 %', 'alumina-99.5', 5),
  body('Silicon nitride', 'silicon-nitride', 4),
  body('Zirconia', 'zirconia-3y-tzp', 4),
  body('Glass-ceramic', 'mica-glass-ceramic', 6),
];

const STEEL = { material: 'stainless-17-4', thickness: 4 };
type Ribs = NonNullable<HeadDraft['frame']>['ribs'];

const frame = (label: string, ribs: Ribs | null): Preset => ({
  label,
  fill: ({ frame: now = STEEL, ...draft }) => (ribs === null ? draft : { ...draft, frame: { ...STEEL, ...now, ribs } }),
});

export const FRAMES: readonly Preset[] = [
  frame('No frame', null),
  frame('Frame', 'none'),
  frame('Ribs between columns', 'columns'),
  frame('Ribs between rows', 'rows'),
  frame('Ribs both ways', 'both'),
];

export const FASTENERS: readonly Preset[] = ([4, 6, 8] as const).map((fasteners) => ({
  label: `${fasteners} screws`,
  fill: (draft) => ({ ...draft, fasteners }),
}));

/** What a new head starts from before a question is answered. */
export const FIRST_DRAFT: HeadDraft = {
  name: 'New head',
  columns: 3,
  rows: 2,
  die: [6, 6],
  skip: [1, 1],
  probes: { count: 200, pitch: 0.4, preload: 0.08, touchdown: 0.16, rate: 0.5 },
  body: { material: 'alumina-96', thickness: 5 },
  frame: { ...STEEL, ribs: 'none' },
  fasteners: 6,
  screw: 'M2.5',
  bow: 0.03,
};
