import { Fault } from '../fault/fault.ts';
import { LONGEST_TEXT } from '../plate/read-json.ts';

/** Entities, and marks and entities of blocks, that are read. */
const MOST_RECORDS = 500_000;

/** One group: its code, its value as text, and the line of the value. */
export interface Group {
  readonly code: number;
  readonly value: string;
  readonly line: number;
}

/** An entity, table entry or block mark with its groups. */
export interface DxfRecord {
  readonly type: string;
  /** Line of its name. */
  readonly line: number;
  readonly groups: readonly Group[];
}

/** Groups of a drawing by section. */
export interface DxfSections {
  /** Header variables by name, each with its groups. */
  readonly header: ReadonlyMap<string, readonly Group[]>;
  /** Of the sections `TABLES`, `BLOCKS` and `ENTITIES`. */
  readonly tables: readonly DxfRecord[];
  readonly blocks: readonly DxfRecord[];
  readonly entities: readonly DxfRecord[];
}

/**
 * Groups of an ASCII drawing interchange file: pairs of lines, a code and a value.
 *
 * @throws Fault UNREADABLE with the line where the pairs break off; TOO_LARGE
 */
export function readRecords(text: string): DxfSections {
  if (text.length > LONGEST_TEXT)
    throw new Fault(
      'TOO_LARGE',
      `The drawing is longer than ${LONGEST_TEXT / 1e6} million characters. Leave out layers.`,
    );
  if (text.includes('\0'))
    throw new Fault(
      'UNREADABLE',
      'The drawing holds NUL characters: it is a DXF in binary form or in UTF-16. Save it as ASCII DXF.',
    );
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  const header = new Map<string, Group[]>();
  const sections: Record<string, DxfRecord[]> = { TABLES: [], BLOCKS: [], ENTITIES: [] };
  let section = '';
  let record: { type: string; line: number; groups: Group[] } | null = null;
  let variable: Group[] | null = null;
  let ended = false;
  for (let i = 0; i + 1 < lines.length && !ended; i += 2) {
    const code = /^\s*-?\d+\s*$/.test(lines[i]) ? Number(lines[i]) : NaN;
    if (Number.isNaN(code)) {
      if (lines.slice(i).every((line) => line.trim() === '')) break;
      throw new Fault(
        'UNREADABLE',
        `Line ${i + 1} of the drawing reads "${lines[i].trim().slice(0, 40)}" where the code of a group must stand. It is no DXF, or lines are missing before; export it again.`,
        '',
        { line: i + 1 },
      );
    }
    const group = { code, value: lines[i + 1].trim(), line: i + 2 };
    if (code === 0) {
      record = { type: group.value.toUpperCase(), line: i + 2, groups: [] };
      if (record.type === 'ENDSEC') section = '';
      else if (record.type === 'EOF') ended = true;
      else if (record.type !== 'SECTION') sections[section]?.push(record);
      if (sections.ENTITIES.length + sections.BLOCKS.length > MOST_RECORDS)
        throw new Fault(
          'TOO_LARGE',
          `The drawing has more than ${MOST_RECORDS} entities by line ${i + 2}. Leave out layers or blocks.`,
          '',
          { line: i + 2 },
        );
    } else if (record?.type === 'SECTION' && code === 2) section = group.value.toUpperCase();
    else if (section === 'HEADER' && code === 9) {
      variable = [];
      header.set(group.value.toUpperCase(), variable);
    } else if (section === 'HEADER') variable?.push(group);
    else record?.groups.push(group);
  }
  if (sections.ENTITIES.length === 0)
    throw new Fault(
      'UNREADABLE',
      `The drawing has no entities${ended ? '' : ', and breaks off before its end'}. Check that the right file was given, as ASCII DXF.`,
      '',
      { line: lines.length },
    );
  return { header, tables: sections.TABLES, blocks: sections.BLOCKS, entities: sections.ENTITIES };
}

/** First value of a code, or null. */
export function textOf({ groups }: DxfRecord, code: number): string | null {
  return groups.find((group) => group.code === code)?.value ?? null;
}

/** First number of a code. @throws BadNumber */
export function numberIn(record: DxfRecord, code: number, otherwise: number): number {
  const group = record.groups.find((held) => held.code === code);
  return group === undefined ? otherwise : toNumber(group);
}

/** Numbers of a code in order. @throws BadNumber */
export function numbersIn({ groups }: DxfRecord, code: number): number[] {
  return groups.filter((group) => group.code === code).map(toNumber);
}

/** A value that is no number: the entity that has it is left out. */
export class BadNumber extends Error {
  constructor(readonly group: Group) {
    super(`has "${group.value.slice(0, 24)}" on line ${group.line} where code ${group.code} needs a number`);
  }
}

export function toNumber(group: Group): number {
  const value = /^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/.test(group.value) ? Number(group.value) : NaN;
  if (Number.isFinite(value)) return value;
  throw new BadNumber(group);
}
