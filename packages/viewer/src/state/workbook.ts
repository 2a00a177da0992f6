import type { HeadModel } from '@flathead/solver';

/** A head on the shelf. */
export interface Variant {
  /** Tells it from the others while the page is open; no part of a file. */
  readonly id: string;
  readonly model: HeadModel;
  /** Shared by a head and its copies, and theirs: they are told apart by what was changed. */
  readonly line: string;
}

/** The document of the page: heads side by side, one of them on the bench. */
export interface Workbook {
  /** At least one. */
  readonly variants: readonly Variant[];
  /** Id of the one on the bench. */
  readonly bench: string;
}

/** Variants that a workbook holds at most. */
export const MOST_VARIANTS = 100;

/**
 * A workbook of models, the given one on the bench.
 *
 * @param lines place of the first variant of the line of each; all of one line if left out
 */
export function workbookOf(models: readonly HeadModel[], bench = 0, lines?: readonly number[]): Workbook {
  const variants = models.map((model, i) => ({ id: `v${i + 1}`, model, line: `v${(lines?.[i] ?? 0) + 1}` }));
  return { variants, bench: variants[bench].id };
}

export function benchModel({ variants, bench }: Workbook): HeadModel {
  return variants.find(({ id }) => id === bench)!.model;
}

/** The workbook with one of its models replaced; itself when that is the same. */
export function withModel(book: Workbook, id: string, model: HeadModel): Workbook {
  if (book.variants.every((variant) => variant.id !== id || variant.model === model)) return book;
  return { ...book, variants: book.variants.map((variant) => (variant.id === id ? { ...variant, model } : variant)) };
}

/** The workbook with another of its variants on the bench. */
export function withBench(book: Workbook, id: string): Workbook {
  return id === book.bench || book.variants.every((variant) => variant.id !== id) ? book : { ...book, bench: id };
}

/**
 * The workbook with a model more, on the bench, behind the one that was there. Itself when it is full.
 *
 * @param line that it belongs to; one of its own if left out
 */
export function withVariant(book: Workbook, model: HeadModel, line?: string): Workbook {
  const { variants, bench } = book;
  if (variants.length >= MOST_VARIANTS) return book;
  const id = `v${1 + Math.max(0, ...variants.map((variant) => Number(variant.id.slice(1))))}`;
  const behind = variants.findIndex((variant) => variant.id === bench) + 1;
  return { variants: variants.toSpliced(behind, 0, { id, model, line: line ?? id }), bench: id };
}

/** The workbook with a copy of a variant behind it and on the bench, under the first free name. */
export function withCopy(book: Workbook, id: string): Workbook {
  const { model, line } = book.variants.find((variant) => variant.id === id)!;
  return withVariant(withBench(book, id), { ...model, name: freeName(model.name, book) }, line);
}

/** The workbook with a model more that was made of the one on the bench, there now, under its name where that is free. */
export function withNamedVariant(book: Workbook, model: HeadModel): Workbook {
  const isTaken = book.variants.some((variant) => variant.model.name === model.name);
  const { line } = book.variants.find(({ id }) => id === book.bench)!;
  return withVariant(book, isTaken ? { ...model, name: freeName(model.name, book) } : model, line);
}

/** The workbook without a variant; the one behind it, else before it, goes on the bench. The last one stays. */
export function withoutVariant(book: Workbook, id: string): Workbook {
  const { variants, bench } = book;
  const at = variants.findIndex((variant) => variant.id === id);
  if (at < 0 || variants.length === 1) return book;
  const left = variants.toSpliced(at, 1);
  return { variants: left, bench: bench === id ? left[Math.min(at, left.length - 1)].id : bench };
}

/** The workbook with a variant back that was taken out, at its place. */
export function withReturned(book: Workbook, variant: Variant, place: number): Workbook {
  const known = book.variants.some(({ id }) => id === variant.id);
  return known || book.variants.length >= MOST_VARIANTS
    ? book
    : { ...book, variants: book.variants.toSpliced(place, 0, variant) };
}

/** The workbook with a variant at another place, counted from 0. */
export function withVariantAt(book: Workbook, id: string, place: number): Workbook {
  const { variants } = book;
  const from = variants.findIndex((variant) => variant.id === id);
  const to = Math.max(0, Math.min(variants.length - 1, place));
  return from < 0 || from === to
    ? book
    : { ...book, variants: variants.toSpliced(from, 1).toSpliced(to, 0, variants[from]) };
}

/** The workbook with the variant on the bench that a step of undo or redo has changed, so that it is seen. */
export function withChangedOnBench(book: Workbook, before: Workbook): Workbook {
  const known = new Map(before.variants.map(({ id, model }) => [id, model]));
  const changed = book.variants.filter(({ id, model }) => known.get(id) !== model);
  return changed.length === 0 || changed.some(({ id }) => id === book.bench) ? book : withBench(book, changed[0].id);
}

/** What a variant is compared with: the one chosen, else the first of its line; `null` where that is itself. */
export function referenceOf({ variants }: Workbook, variant: Variant, chosen: string | null): Variant | null {
  const picked = variants.find(({ id }) => id === chosen);
  const first = variants.find(({ line }) => line === variant.line)!;
  const found = picked ?? first;
  return found.id === variant.id ? null : found;
}

/** `Kestrel 2` for `Kestrel`, `Kestrel 3` for `Kestrel 2`: the first that no variant has. */
function freeName(name: string, { variants }: Workbook): string {
  const taken = new Set(variants.map(({ model }) => model.name));
  const stem = name.replace(/ \d+$/, '').slice(0, 90);
  for (let n = 2; ; n++) if (!taken.has(`${stem} ${n}`)) return `${stem} ${n}`;
}
