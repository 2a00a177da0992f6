import { createStore, type StoreApi } from 'zustand/vanilla';
import type { HeadStore } from '../state/head-store.ts';
import type { Workbook } from '../state/workbook.ts';
import { type Found, forgetLeft, generationOf, leaveBehind, slotOf } from './generations.ts';
import type { LeavingStorage, Storage } from './storage.ts';

/** Whether the browser's storage has what is on the page. */
export interface KeepingState {
  /** `elsewhere`: another tab keeps its own. */
  readonly status: 'kept' | 'waiting' | 'failed' | 'elsewhere';
  /** Why it failed. */
  readonly problem: Problem | null;
}

export interface Problem {
  /** The storage is full, or it refused for another reason. */
  readonly kind: 'full' | 'other';
  readonly message: string;
}

export interface Keeper {
  readonly state: StoreApi<KeepingState>;
  /** Whether the page has anything that this tab has not kept. */
  behind(): boolean;
  /** Of the generation that this tab wrote or read last. */
  counter(): number;
  /** Writes what is not yet kept. Resolves when it is, or could not be. */
  flush(): Promise<void>;
  /** Keeps at once what is not yet kept, as the page is being left. */
  leave(): void;
  /** Whether this tab is the one to write. */
  setTurn(ours: boolean): void;
  /** What the storage holds now, in the place of what this tab wrote or read last. */
  know(found: Pick<Found, 'book' | 'counter' | 'next'>): void;
}

/** Edits within this time are written as one, ms; no longer run of edits goes unwritten. */
const SETTLE = 400;

/**
 * Keeps the workbook of the page in two generations in turns, while it is this tab's turn; at first it is not.
 *
 * @param found what the page was opened with
 */
export function createKeeper(
  head: HeadStore,
  storage: Storage,
  leaving: LeavingStorage | null,
  found: Pick<Found, 'book' | 'counter' | 'next'>,
  clock: () => number = Date.now,
): Keeper {
  const state = createStore<KeepingState>()(() => ({ status: 'kept', problem: null }));
  let kept: Workbook | null = found.book;
  let { counter, next } = found;
  let ours = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing: Promise<void> | null = null;

  const behind = (): boolean => head.getState().book !== kept;

  const write = async (): Promise<void> => {
    const { book } = head.getState();
    try {
      await storage.set(slotOf(next), generationOf(book, next, clock()));
      counter = next++;
      kept = book;
      if (leaving !== null) forgetLeft(leaving);
      state.setState({ status: behind() ? 'waiting' : 'kept', problem: null });
    } catch (thrown) {
      const message = thrown instanceof Error ? thrown.message : String(thrown);
      const full = thrown instanceof Error && thrown.name === 'QuotaExceededError';
      state.setState({ status: 'failed', problem: { kind: full ? 'full' : 'other', message } });
    }
  };

  const flush = async (): Promise<void> => {
    clearTimeout(timer);
    timer = undefined;
    if (writing !== null) await writing;
    if (!ours || !behind()) return;
    writing ??= write().finally(() => {
      writing = null;
    });
    await writing;
    if (behind() && state.getState().status !== 'failed') schedule();
  };

  const schedule = (): void => {
    if (state.getState().status === 'kept') state.setState({ status: 'waiting' });
    timer ??= setTimeout(() => void flush(), SETTLE);
  };

  head.subscribe(() => {
    if (ours && behind()) schedule();
  });
  return {
    state,
    behind,
    counter: () => counter,
    flush,
    leave() {
      if (leaving === null || !ours || !behind()) return;
      try {
        leaveBehind(leaving, generationOf(head.getState().book, next, clock()));
      } catch {
        // Full as well; the write that is under way is the last chance.
      }
    },
    setTurn(now) {
      ours = now;
      state.setState({ status: ours ? 'kept' : 'elsewhere', problem: null });
      if (ours && behind()) schedule();
    },
    know(held) {
      kept = held.book;
      ({ counter, next } = held);
    },
  };
}
