import { type FileKind, type ReadFile, readFile } from '@flathead/solver/exchange';
import { parseNumber } from '../format/parse-number.ts';

/** How a file is read and taken; all else is found out from the file. */
export interface Choices {
  readonly kind: FileKind;
  /** Of a workbook; empty = the first that it shows. */
  readonly sheet: string;
  /** Of lengths, forces and heights, where the file gives none; empty = found out. */
  readonly units: string;
  readonly forceUnits: string;
  readonly heightUnits: string;
  /** Columns of a list by what they are, each by its title or number; what is left out is found out. */
  readonly columns: Readonly<Record<string, string>>;
  /** One of the ways of the kind; empty = the usual one. */
  readonly as: string;
  /** Of a drawing; empty = all. */
  readonly layers: readonly string[];
  /** Moves the middle of a drawing to the origin. */
  readonly centre: boolean;
  /** As typed, mm; empty = found out, or the usual. Of a drawing the largest that is closed, of probes what parts sites. */
  readonly gap: string;
  /** Of chords on curves, as typed, mm; empty = the usual. */
  readonly tolerance: string;
}

export const FIRST_CHOICES: Choices = {
  ...{ kind: 'probes', sheet: '', units: '', forceUnits: '', heightUnits: '', columns: {} },
  ...{ as: '', layers: [], centre: false, gap: '', tolerance: '' },
};

/** A length that is typed beside a file, mm; `null` where it is none of 0 or more, undefined where nothing is typed. */
export function typedLength(text: string): number | null | undefined {
  if (text.trim() === '') return undefined;
  const value = parseNumber(text, 'mm');
  return value === null || value < 0 ? null : value;
}

/** @throws Fault where nothing can be read */
export function readAs(content: Uint8Array, choices: Choices): ReadFile {
  const { kind, sheet, units, forceUnits, heightUnits, columns, as, layers, centre, gap, tolerance } = choices;
  const said = (text: string): string | undefined => (text === '' ? undefined : text);
  const named = Object.entries(columns).filter(([, name]) => name !== '');
  return readFile(kind, content, {
    sheet: said(sheet),
    units: said(units),
    forceUnits: said(forceUnits),
    heightUnits: said(heightUnits),
    columns: named.length === 0 ? undefined : Object.fromEntries(named),
    as: said(as),
    layers,
    centre: centre ? [0, 0] : undefined,
    gap: typedLength(gap) ?? undefined,
    tolerance: typedLength(tolerance) ?? undefined,
  });
}
