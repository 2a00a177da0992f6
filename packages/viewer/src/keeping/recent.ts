import { modelHash } from '@flathead/solver';
import type { Storage } from './storage.ts';
import { type FileContent, workbookText } from './workbook-file.ts';

/** A head or workbook that was opened, saved or replaced, with all of it, to be opened again. */
export interface Recent {
  readonly kind: FileContent['kind'];
  readonly name: string;
  /** Hash of the head, or of the one on the bench. */
  readonly hash: string;
  /** Heads in it. */
  readonly heads: number;
  /** ms since 1970 */
  readonly at: number;
  readonly text: string;
}

const KEY = 'flathead-recent-1';
const MOST = 12;
/** Longer texts are left to the file they came from, characters. */
const LONGEST = 1_000_000;

export function recentOf(name: string, content: FileContent, at: number): Recent {
  if (content.kind === 'head') {
    const { model } = content;
    return { kind: 'head', name, hash: modelHash(model), heads: 1, at, text: JSON.stringify(model) };
  }
  const { variants, bench } = content.book;
  const { model } = variants.find(({ id }) => id === bench)!;
  const text = workbookText(content.book);
  return { kind: 'workbook', name, hash: modelHash(model), heads: variants.length, at, text };
}

/** Those that can be opened again, the latest first. */
export async function recentFiles(storage: Storage): Promise<readonly Recent[]> {
  const stored = await storage.get(KEY);
  return Array.isArray(stored) ? stored.filter(isRecent) : [];
}

/** Puts one in front; an older one of the same content gives way, then the oldest. */
export async function addRecent(storage: Storage, recent: Recent): Promise<void> {
  if (recent.text.length > LONGEST) return;
  const others = (await recentFiles(storage)).filter(({ text }) => text !== recent.text);
  await storage.set(KEY, [recent, ...others].slice(0, MOST));
}

export async function clearRecent(storage: Storage): Promise<void> {
  await storage.del(KEY);
}

function isRecent(value: unknown): value is Recent {
  if (typeof value !== 'object' || value === null) return false;
  const { kind, name, hash, heads, at, text }: Record<string, unknown> = { ...value };
  return (
    (kind === 'head' || kind === 'workbook') &&
    [name, hash, text].every((field) => typeof field === 'string') &&
    [heads, at].every((field) => typeof field === 'number')
  );
}
