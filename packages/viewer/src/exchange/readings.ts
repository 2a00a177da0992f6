import { type FileKind, type ReadFile, readFile } from '@flathead/solver/exchange';

/** How a file is read and taken; all else is found out from the file. */
export interface Choices {
  readonly kind: FileKind;
  /** Of a workbook; empty = the first that it shows. */
  readonly sheet: string;
  /** Of lengths, where the file gives none; empty = found out. */
  readonly units: string;
  /** One of the ways of the kind; empty = the usual one. */
  readonly as: string;
  /** Of a drawing; empty = all. */
  readonly layers: readonly string[];
  /** Moves the middle of a drawing to the origin. */
  readonly centre: boolean;
}

export const FIRST_CHOICES: Choices = { kind: 'probes', sheet: '', units: '', as: '', layers: [], centre: false };

/** @throws Fault where nothing can be read */
export function readAs(content: Uint8Array, { kind, sheet, units, as, layers, centre }: Choices): ReadFile {
  return readFile(kind, content, {
    sheet: sheet === '' ? undefined : sheet,
    units: units === '' ? undefined : units,
    as: as === '' ? undefined : as,
    layers,
    centre: centre ? [0, 0] : undefined,
  });
}
