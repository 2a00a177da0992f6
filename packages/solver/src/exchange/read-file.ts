import { Fault } from '../fault/fault.ts';
import type { HeadModel } from '../model/head-model.ts';
import { didYouMean } from '../plate/near-names.ts';
import { readFastenerList, takeFasteners } from './fastener-list.ts';
import type { FileContent } from './file-text.ts';
import { readHeightMap, takeHeights } from './heights.ts';
import { type DrawingOptions, readDrawing } from './outline.ts';
import { type ProbeListOptions, readProbeList } from './probe-list.ts';
import type { Preview, Reading, Taken } from './reading.ts';
import { OUTLINE_ROLES, takeOutline } from './take-outline.ts';
import { takeProbes } from './take-probes.ts';

/** What a file can be read as. */
export const FILE_KINDS = ['probes', 'outline', 'heights', 'fasteners'] as const;
export type FileKind = (typeof FILE_KINDS)[number];

/** What is read of it, and how it is taken: what its kind does not know is passed over. */
export interface ReadFileOptions extends ProbeListOptions, DrawingOptions {
  /** One of the ways of its kind, see {@link fileRoles}; the first if left out. */
  readonly as?: string | undefined;
}

/** A file that was read, and how it goes into a head. */
export interface ReadFile {
  readonly preview: Preview;
  /** @throws Fault when the head can't take it */
  readonly take: (model: HeadModel) => Taken<HeadModel>;
}

/** What is looked at in a file of a kind, and the ways to take it, the usual one first. */
const READERS: Readonly<
  Record<
    FileKind,
    { readonly roles: readonly string[]; read(content: FileContent, options: ReadFileOptions, role: string): ReadFile }
  >
> = {
  probes: {
    roles: ['points', 'field'],
    read: (content, options, role) =>
      taking(readProbeList(content, options), (model, list) =>
        takeProbes(model, list, role === 'field' ? 'field' : 'points'),
      ),
  },
  outline: {
    roles: OUTLINE_ROLES,
    read: (content, options, role) =>
      taking(readDrawing(content, options), (model, drawing) =>
        takeOutline(model, drawing, OUTLINE_ROLES.find((known) => known === role) ?? 'auto'),
      ),
  },
  heights: { roles: [], read: (content, options) => taking(readHeightMap(content, options), takeHeights) },
  fasteners: { roles: [], read: (content, options) => taking(readFastenerList(content, options), takeFasteners) },
};

/** Ways to take what a kind of file holds, the usual one first; none where there is but one. */
export function fileRoles(kind: FileKind): readonly string[] {
  return READERS[kind].roles;
}

/** Kind that a file probably is, by its name. */
export function fileKind(name: string): FileKind {
  if (/\.(dxf|svg)$/i.test(name)) return 'outline';
  if (/height|flatness|topo|warp/i.test(name)) return 'heights';
  return /fasten|screw/i.test(name) ? 'fasteners' : 'probes';
}

/**
 * Reads a file of another program as one of the kinds; nothing is taken yet.
 *
 * @throws Fault UNREADABLE, USAGE or TOO_LARGE
 */
export function readFile(kind: FileKind, content: FileContent, options: ReadFileOptions = {}): ReadFile {
  const { roles, read } = READERS[kind];
  const { as: role = roles[0] ?? '' } = options;
  if (options.as !== undefined && !roles.includes(options.as))
    throw new Fault(
      'USAGE',
      `${kind} cannot be taken as "${options.as}".${didYouMean(options.as, roles)} ${roles.length === 0 ? 'Leave it out.' : `Use ${roles.join(', ')}.`}`,
      '',
      { value: options.as, expected: roles },
    );
  return read(content, options, role);
}

function taking<T>({ read, preview }: Reading<T>, take: (model: HeadModel, read: T) => Taken<HeadModel>): ReadFile {
  return { preview, take: (model) => take(model, read) };
}
