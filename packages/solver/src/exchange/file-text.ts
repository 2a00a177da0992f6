import { Fault } from '../fault/fault.ts';

/** A file as its caller holds it: text, or bytes whose encoding is found out. */
export type FileContent = string | Uint8Array;

/** Text of a file, and what was decided about its letters. */
export interface FileText {
  readonly text: string;
  readonly guesses: readonly string[];
}

/** First bytes of files that hold no text, and what to do about them. */
const NO_TEXT: readonly { readonly bytes: readonly number[]; readonly what: string; readonly remedy: string }[] = [
  { bytes: [0xd0, 0xcf, 0x11, 0xe0], what: 'a workbook of the older binary kind', remedy: 'Save it as .xlsx or CSV' },
  { bytes: [0x50, 0x4b, 0x03, 0x04], what: 'a packed file', remedy: 'Unpack it, or save it as CSV, DXF or SVG' },
  { bytes: [0x1f, 0x8b], what: 'compressed', remedy: 'Unpack it' },
  { bytes: [0x25, 0x50, 0x44, 0x46], what: 'a PDF', remedy: 'Export it as CSV, DXF or SVG' },
];

/**
 * Letters of a file: UTF-8, UTF-16 with a byte order mark, or else Windows-1252.
 *
 * @param what names the file in messages
 * @throws Fault UNREADABLE for what is no text
 */
export function fileText(content: FileContent, what: string): FileText {
  if (typeof content === 'string') return { text: content, guesses: [] };
  const begins = (bytes: readonly number[]) => bytes.every((byte, i) => content[i] === byte);
  const other = NO_TEXT.find(({ bytes }) => begins(bytes));
  if (other !== undefined) throw new Fault('UNREADABLE', `The ${what} is ${other.what}. ${other.remedy}.`);
  if (begins([0xff, 0xfe])) return { text: new TextDecoder('utf-16le').decode(content), guesses: [] };
  if (begins([0xfe, 0xff])) return { text: new TextDecoder('utf-16be').decode(content), guesses: [] };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(content), guesses: [] };
  } catch {
    return {
      text: new TextDecoder('windows-1252').decode(content),
      guesses: ['The letters are no UTF-8 and were read as Windows-1252; save the file as UTF-8 if names look wrong.'],
    };
  }
}
