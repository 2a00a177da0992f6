import type { HeadModel } from '@flathead/solver';
import {
  type OutlineRole,
  type Preview,
  type Reading,
  readDrawing,
  readFastenerList,
  readHeightMap,
  readProbeList,
  type Taken,
  takeFasteners,
  takeHeights,
  takeOutline,
  takeProbes,
} from '@flathead/solver/exchange';

/** What a file can be read as. */
export type FileKind = 'probes' | 'drawing' | 'heights' | 'fasteners';

/** How it is read and taken; all else is found out from the file. */
export interface Choices {
  readonly kind: FileKind;
  /** Of lengths, where the file gives none; empty = found out. */
  readonly units: string;
  readonly probesAs: 'points' | 'field';
  readonly drawingAs: OutlineRole;
  /** Of a drawing; empty = all. */
  readonly layers: readonly string[];
  /** Moves the middle of a drawing to the origin. */
  readonly centre: boolean;
}

export const FIRST_CHOICES: Choices = {
  kind: 'probes',
  units: '',
  probesAs: 'points',
  drawingAs: 'auto',
  layers: [],
  centre: false,
};

/** What was read, and how it goes into a head. */
export interface ReadFile {
  readonly preview: Preview;
  take(model: HeadModel): Taken<HeadModel>;
}

/** Kind that a file probably is, by its name. */
export function kindOfName(name: string): FileKind {
  if (/\.(dxf|svg)$/i.test(name)) return 'drawing';
  if (/height|flatness|topo|warp/i.test(name)) return 'heights';
  return /fasten|screw/i.test(name) ? 'fasteners' : 'probes';
}

/** @throws Fault where nothing can be read */
export function readAs(text: string, { kind, units: asked, probesAs, drawingAs, layers, centre }: Choices): ReadFile {
  const units = asked === '' ? undefined : asked;
  switch (kind) {
    case 'probes':
      return taking(readProbeList(text, { units }), (model, list) => takeProbes(model, list, probesAs));
    case 'drawing': {
      const options = {
        units,
        layers: layers.length === 0 ? undefined : layers,
        centre: centre ? ([0, 0] as const) : undefined,
      };
      return taking(readDrawing(text, options), (model, drawing) => takeOutline(model, drawing, drawingAs));
    }
    case 'heights':
      return taking(readHeightMap(text, { units }), takeHeights);
    case 'fasteners':
      return taking(readFastenerList(text, { units }), takeFasteners);
  }
}

function taking<T>({ read, preview }: Reading<T>, take: (model: HeadModel, read: T) => Taken<HeadModel>): ReadFile {
  return { preview, take: (model) => take(model, read) };
}
