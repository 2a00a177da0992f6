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
  /** Versions of workbooks that a newer page keeps here under keys of its own. */
  readonly newerVersions: readonly number[];
}

const PREFIX = 'flathead-workbook-';
/** Where generations lie: even and odd counters, and the one written while the page was left. */
const SLOTS = ['even', 'odd'].map((slot) => `${PREFIX}${WORKBOOK_VERSION}-${slot}`);
const LEFT = `${PREFIX}${WORKBOOK_VERSION}-left`;
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
  const stored = await Promise.all(SLOTS.map(async (key) => ({ key, raw: await storage.get(key) })));
  const left = leaving?.getItem(LEFT) ?? null;
  const entries = [...stored, { key: LEFT, raw: left === null ? undefined : fromText(left) }]
    .filter(({ raw }) => raw !== undefined)
    .map(({ key, raw }) => ({ key, raw, ...counted(raw) }))
    .sort((a, b) => b.counter - a.counter);
  const unread: Unread[] = [];
  const newerVersions = await versionsBeyond(storage);
  const highest = entries[0]?.counter ?? 0;
  for (const { key, raw, counter, at } of entries) {
    try {
      const content = readContent(textIn(raw));
      const book = content.kind === 'workbook' ? content.book : null;
      const next = (highest + 1) % 2 === counter % 2 ? highest + 2 : highest + 1;
      if (book !== null) return { book, at, counter, next, unread, newerVersions };
    } catch (thrown) {
      unread.push({ key, raw, fault: faultReport(thrown) });
    }
  }
  return { ...(await loneHead(storage)), counter: 0, next: highest + 1, unread, newerVersions };
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
    const text = JSON.stringify({ workbook: WORKBOOK_VERSION, variants: [stored.model] });
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
