import { checkHeadModel, Fault, type HeadModel, readJson } from '@flathead/solver';
import { MOST_VARIANTS, type Workbook, workbookOf } from '../state/workbook.ts';

/** Newest version of the format that this page writes and reads: it has `lines`, which pages before it refuse as a key. */
export const WORKBOOK_VERSION = 2;

/** What a file may hold. */
export type FileContent =
  | { readonly kind: 'head'; readonly model: HeadModel }
  | { readonly kind: 'workbook'; readonly book: Workbook };

/**
 * A workbook as JSON: `{ "workbook": 2, "bench": 0, "variants": [head model, ...], "lines": [0, ...] }`.
 *
 * `bench` counts from 0. `lines` gives for each variant the place of the first of its line, which it is compared with. Where
 * that is the first variant for all it is left out, and the version is 1, for pages that read no other.
 *
 * @param indent spaces that each level is set in by; 0 = all in one line
 */
export function workbookText({ variants, bench }: Workbook, indent = 0): string {
  const lines = variants.map(({ line }) => variants.findIndex((other) => other.line === line));
  const hasLines = lines.some((first) => first !== 0);
  const content = {
    workbook: hasLines ? WORKBOOK_VERSION : 1,
    bench: variants.findIndex(({ id }) => id === bench),
    variants: variants.map(({ model }) => model),
    ...(hasLines && { lines }),
  };
  return JSON.stringify(content, null, indent);
}

/**
 * Head model or workbook of a JSON text, checked against its schema.
 *
 * @throws Fault that says where the text or a value is wrong; NOT_YET for a workbook of a newer version
 */
export function readContent(text: string): FileContent {
  const value = readJson(text);
  return isObject(value) && 'workbook' in value
    ? { kind: 'workbook', book: workbookIn(value) }
    : { kind: 'head', model: checkHeadModel(value) };
}

function workbookIn({ workbook, bench = 0, variants, lines, ...unknown }: Record<string, unknown>): Workbook {
  if (typeof workbook === 'number' && Number.isInteger(workbook) && workbook > WORKBOOK_VERSION)
    throw new Fault(
      'NOT_YET',
      `The workbook is of format version ${workbook}; this page reads versions 1 to ${WORKBOOK_VERSION}. Open it with the newer page that wrote it, or save its heads there one by one.`,
      'workbook',
      { value: workbook, expected: WORKBOOK_VERSION },
    );
  if (workbook !== 1 && workbook !== WORKBOOK_VERSION)
    throw wrong('workbook', workbook, `1 or ${WORKBOOK_VERSION}, the format version`);
  const [key] = Object.keys(unknown);
  if (key !== undefined)
    throw wrong(key, unknown[key], 'no such key; a workbook has workbook, bench, variants and lines');
  if (!Array.isArray(variants) || variants.length === 0)
    throw wrong('variants', variants, 'a list of one head model or more');
  if (variants.length > MOST_VARIANTS)
    throw new Fault(
      'TOO_LARGE',
      `The workbook has ${variants.length} variants; at most ${MOST_VARIANTS} are read. Split it.`,
      'variants',
      { value: variants.length, expected: `at most ${MOST_VARIANTS}` },
    );
  if (typeof bench !== 'number' || !Number.isInteger(bench) || bench < 0 || bench >= variants.length)
    throw wrong('bench', bench, `the place of a variant, 0 to ${variants.length - 1}`);
  return workbookOf(variants.map(variantAt), bench, linesIn(lines, variants.length));
}

function linesIn(lines: unknown, count: number): number[] | undefined {
  if (lines === undefined) return undefined;
  const places = Array.isArray(lines) ? lines.filter((place) => Number.isInteger(place) && place >= 0) : [];
  // Each line is named by its first variant.
  const right = places.length === count && places.every((place, i) => place <= i && places[place] === place);
  if (!right) throw wrong('lines', lines, `for each of the ${count} variants the place of the first of its line`);
  return places;
}

function variantAt(value: unknown, index: number): HeadModel {
  try {
    return checkHeadModel(value);
  } catch (thrown) {
    if (!(thrown instanceof Fault)) throw thrown;
    const path = ['variants', index, ...(thrown.path === '' ? [] : [thrown.path])].join('.');
    throw new Fault(thrown.code, `In variant ${index + 1}: ${thrown.message}`, path, thrown.details);
  }
}

function wrong(path: string, value: unknown, expected: string): Fault {
  const shown = JSON.stringify(value)?.slice(0, 60) ?? 'missing';
  return new Fault('SCHEMA', `${path} is ${shown}; expected ${expected}. Correct it and open the file again.`, path, {
    value,
    expected,
  });
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
