import { Fault } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { readContent, workbookText } from '../../src/keeping/workbook-file.ts';
import { benchModel, workbookOf } from '../../src/state/workbook.ts';
import { sampleHead } from '../state/sample-head.ts';

const named = (name: string) => ({ ...sampleHead, name });
const book = workbookOf([named('a'), named('b'), named('c')], 2);

function faultOf(value: unknown): Fault {
  try {
    readContent(typeof value === 'string' ? value : JSON.stringify(value));
  } catch (thrown) {
    if (thrown instanceof Fault) return thrown;
    throw thrown;
  }
  throw new Error('It was read.');
}

describe('a workbook file', () => {
  it('comes back as it was written, and is plain to read', () => {
    const text = workbookText(book, 2);
    expect(JSON.parse(text)).toEqual({ workbook: 1, bench: 2, variants: [named('a'), named('b'), named('c')] });
    expect(readContent(text)).toEqual({ kind: 'workbook', book });
  });

  it('says which heads are of one line where they are of several', () => {
    const lined = workbookOf([named('a'), named('b'), named('c')], 0, [0, 1, 1]);
    // A page that knows no lines says of version 2 that a newer one wrote it; of the key it would say that it is wrong.
    expect(JSON.parse(workbookText(lined))).toMatchObject({ workbook: 2, lines: [0, 1, 1] });
    expect(readContent(JSON.stringify({ ...JSON.parse(workbookText(lined)), workbook: 1 }))).toEqual({
      kind: 'workbook',
      book: lined,
    });
    expect(readContent(workbookText(lined))).toEqual({ kind: 'workbook', book: lined });
    for (const lines of [[0, 1], [0, 2, 2], [0, 1, -1], [1, 1, 1], 'all'])
      expect(faultOf({ workbook: 1, variants: [sampleHead, sampleHead, sampleHead], lines }).path).toBe('lines');
  });

  it('may leave the bench out; a head model is told from it', () => {
    const content = readContent(JSON.stringify({ workbook: 1, variants: [named('a'), named('b')] }));
    expect(content.kind === 'workbook' && benchModel(content.book).name).toBe('a');
    expect(readContent(JSON.stringify(sampleHead))).toEqual({ kind: 'head', model: sampleHead });
  });

  it.each([
    ['SCHEMA', 'workbook', { workbook: '1', variants: [sampleHead] }],
    ['SCHEMA', 'workbook', { workbook: 0, variants: [sampleHead] }],
    ['NOT_YET', 'workbook', { workbook: 3, heads: [sampleHead] }],
    ['SCHEMA', 'variants', { workbook: 1 }],
    ['SCHEMA', 'variants', { workbook: 1, variants: [] }],
    ['TOO_LARGE', 'variants', { workbook: 1, variants: Array.from({ length: 101 }, () => sampleHead) }],
    ['SCHEMA', 'bench', { workbook: 1, bench: 1, variants: [sampleHead] }],
    ['SCHEMA', 'bench', { workbook: 1, bench: 0.5, variants: [sampleHead] }],
    ['SCHEMA', 'heads', { workbook: 1, variants: [sampleHead], heads: 3 }],
    ['OUT_OF_RANGE', 'variants.1.body.thickness', { workbook: 1, variants: [sampleHead, broken(-3)] }],
    ['NOT_JSON', '', '{ "workbook": 1,'],
  ])('is refused with %s at "%s"', (code, path, value) => {
    const fault = faultOf(value);
    expect([fault.code, fault.path]).toEqual([code, path]);
    expect(fault.message.length).toBeGreaterThan(30);
  });
});

function broken(thickness: number) {
  return { ...sampleHead, body: { ...sampleHead.body, thickness } };
}
