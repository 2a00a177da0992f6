import { type FaultReport, faultReport } from '@flathead/solver';
import type { Workbook } from '../state/workbook.ts';
import type { LeavingStorage, Storage } from './storage.ts';
import { readContent, WORKBOOK_VERSION, workbookText } from './workbook-file.ts';

/**
 * A workbook as stored. Two generations are kept in turns, so that one is whole while the other is written. They are
 * ordered by their counter; a clock may be set back.
 */
export interface Generation {
  readonly counter: number;
  /** When it was written by the clock of then, ms since 1970. */
  readonly at: number;
  readonly text: string;
}

/** A stored generation that could not be read. It is set aside and never written over. */
export interface Unread {
  readonly key: string;
  readonly raw: unknown;
  readonly fault: FaultReport;
}

/** What the storage held when the page was opened. */
export interface Found {
  /** `null` when there is none, or none that can be read. */
  readonly book: Workbook | null;
  readonly at: number;
  /** Of the generation that was read; 0 when there is none. */
  readonly counter: number;
  /** The first counter to write, in the place of a generation that is not the one read. */
  readonly next: number;
  /** Newer generations than the one read. */
  readonly unread: readonly Unread[];
  /** What an older page has kept here since that generation, under keys of its own. */
  readonly fromOlder: Workbook | null;
  /** Versions of workbooks that a newer page keeps here under keys of its own. */
  readonly newerVersions: readonly number[];
}

const PREFIX = 'flathead-workbook-';
/** Where the generations of a version lie: even and odd counters, and the one written while the page was left. */
const slotsOf = (version: number) => ['even', 'odd'].map((slot) => `${PREFIX}${version}-${slot}`);
const leftOf = (version: number) => `${PREFIX}${version}-left`;
/**
 * Pages of a version write under its keys, whatever that of the text: an older one neither reads nor writes over them. The
 * version before is read where there is nothing else, or what an older page has kept since.
 */
const [SLOTS, LEFT, BEFORE] = [slotsOf(WORKBOOK_VERSION), leftOf(WORKBOOK_VERSION), WORKBOOK_VERSION - 1];
/** The head that pages before workbooks kept. */
const LONE_HEAD = 'flathead-head';

export function slotOf(counter: number): string {
  return SLOTS[counter % 2];
}

export function generationOf(book: Workbook, counter: number, at: number): Generation {
  return { counter, at, text: workbookText(book) };
}

/** Finds the newest workbook that can be read. */
export async function findWorkbook(storage: Storage, leaving: LeavingStorage | null): Promise<Found> {
  const newerVersions = await versionsBeyond(storage);
  const [own, before] = await Promise.all([
    newestOf(WORKBOOK_VERSION, storage, leaving),
    newestOf(BEFORE, storage, leaving),
  ]);
  const { highest, counter } = own;
  if (own.book !== null) {
    const next = (highest + 1) % 2 === counter % 2 ? highest + 2 : highest + 1;
    const fromOlder = before.at > own.at ? before.book : null;
    return { book: own.book, at: own.at, counter, next, unread: own.unread, fromOlder, newerVersions };
  }
  const { book, at } = before.book === null ? await loneHead(storage) : before;
  return {
    ...{ book, at, counter: 0, next: highest + 1, unread: [...own.unread, ...before.unread], fromOlder: null },
    newerVersions,
  };
}

interface Newest {
  readonly book: Workbook | null;
  readonly at: number;
  readonly counter: number;
  /** Of all, read or not. */
  readonly highest: number;
  readonly unread: readonly Unread[];
}

/** The newest generation that can be read under the keys of a version. */
async function newestOf(version: number, storage: Storage, leaving: LeavingStorage | null): Promise<Newest> {
  const stored = await Promise.all(slotsOf(version).map(async (key) => ({ key, raw: await storage.get(key) })));
  const left = leaving?.getItem(leftOf(version)) ?? null;
  const entries = [...stored, { key: leftOf(version), raw: left === null ? undefined : fromText(left) }]
    .filter(({ raw }) => raw !== undefined)
    .map(({ key, raw }) => ({ key, raw, ...counted(raw) }))
    .sort((a, b) => b.counter - a.counter);
  const highest = entries[0]?.counter ?? 0;
  const unread: Unread[] = [];
  for (const { key, raw, counter, at } of entries) {
    try {
      const content = readContent(textIn(raw));
      if (content.kind === 'workbook') return { book: content.book, at, counter, highest, unread };
    } catch (thrown) {
      unread.push({ key, raw, fault: faultReport(thrown) });
    }
  }
  return { book: null, at: 0, counter: 0, highest, unread };
}

/** Keeps a generation that could not be read under a key that nothing writes to. */
export async function setAside(storage: Storage, { key, raw }: Unread): Promise<void> {
  const taken = new Set(await storage.keys());
  let n = 1;
  while (taken.has(`flathead-aside-${n}`)) n++;
  await storage.set(`flathead-aside-${n}`, { from: key, raw });
}

/** Keeps a generation while the page is left, when only what is done at once is sure to be done. */
export function leaveBehind(leaving: LeavingStorage, generation: Generation): void {
  leaving.setItem(LEFT, JSON.stringify(generation));
}

export function forgetLeft(leaving: LeavingStorage): void {
  leaving.removeItem(LEFT);
}

async function loneHead(storage: Storage): Promise<{ readonly book: Workbook | null; readonly at: number }> {
  const stored = await storage.get(LONE_HEAD);
  if (typeof stored !== 'object' || stored === null || !('model' in stored)) return { book: null, at: 0 };
  try {
    const text = JSON.stringify({ workbook: 1, variants: [stored.model] });
    const content = readContent(text);
    const at = 'at' in stored ? Number(stored.at) : 0;
    return { book: content.kind === 'workbook' ? content.book : null, at };
  } catch {
    return { book: null, at: 0 };
  }
}

async function versionsBeyond(storage: Storage): Promise<number[]> {
  const versions = (await storage.keys())
    .map((key) => Number(new RegExp(`^${PREFIX}(\\d+)-`).exec(key)?.[1] ?? 0))
    .filter((version) => version > WORKBOOK_VERSION);
  return [...new Set(versions)];
}

function counted(raw: unknown): { readonly counter: number; readonly at: number } {
  const { counter, at } =
    typeof raw === 'object' && raw !== null ? { counter: 0, at: 0, ...raw } : { counter: 0, at: 0 };
  return { counter: Number.isSafeInteger(counter) && counter > 0 ? counter : 0, at: Number(at) };
}

function textIn(raw: unknown): string {
  return typeof raw === 'object' && raw !== null && 'text' in raw && typeof raw.text === 'string' ? raw.text : '';
}

function fromText(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}
