import { type DxfRecord, numberIn, textOf } from './dxf-records.ts';

/** Marks of drawings for letters that older programs lack. */
const MARKS: Readonly<Record<string, string>> = { c: '\u00d8', d: '\u00b0', p: '\u00b1' };
/** Ways of setting a text along x that leave its place to the first point: left, aligned and fitted. */
const BY_FIRST_POINT = [0, 3, 5];

/** Words of a text without the codes that set its face, size and lines. */
export function wordsOf(record: DxfRecord): string {
  const parts = record.type === 'MTEXT' ? record.groups.filter(({ code }) => code === 3).map(({ value }) => value) : [];
  const text = [...parts, textOf(record, 1) ?? '']
    .join('')
    .replace(/\\U\+([0-9A-F]{4})/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    .replace(/%%([cdp])/gi, (_, mark: string) => MARKS[mark.toLowerCase()])
    .replace(/%%[uok]/gi, '');
  if (record.type !== 'MTEXT') return text;
  return text
    .replace(/\\[PX~]/g, ' ')
    .replace(/\\S([^;]*);/g, (_, stacked: string) => stacked.replace(/[#^]/, '/'))
    .replace(/\\[ACFHQTWpf][^;]*;/g, '')
    .replace(/\\[LlOoKk]/g, '')
    .replace(/(?<!\\)[{}]/g, '')
    .replace(/\\([\\{}])/g, '$1')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Where a text stands: its first point, or the second where it is set about that. */
export function placeOf(record: DxfRecord): [number, number] {
  const along = numberIn(record, 72, 0);
  const up = record.type === 'TEXT' ? numberIn(record, 73, 0) : 0;
  const second = record.type === 'TEXT' && (up !== 0 || !BY_FIRST_POINT.includes(along)) && textOf(record, 11) !== null;
  return second
    ? [numberIn(record, 11, 0), numberIn(record, 21, 0)]
    : [numberIn(record, 10, 0), numberIn(record, 20, 0)];
}
