import { checkHeadModel, type HeadModel } from '@flathead/solver';
import { get, set } from 'idb-keyval';
import { notify } from '../state/notice-store.ts';
import type { Workbench } from '../state/workbench.ts';

const KEY = 'flathead-head';
/** Quiet after an edit before it is stored, ms. */
const SETTLE = 400;

interface Stored {
  readonly model: unknown;
  /** ms since 1970 */
  readonly at: number;
}

/** The head of the last visit, if the browser kept one that this version can read. */
export async function restoredHead(): Promise<{ readonly model: HeadModel; readonly at: Date } | null> {
  try {
    const stored = await get<Stored>(KEY);
    return stored ? { model: checkHeadModel(stored.model), at: new Date(stored.at) } : null;
  } catch {
    return null;
  }
}

/** Keeps the head in the browser's storage, shortly after each edit and when the page is left. */
export function autosave({ head, notices }: Workbench): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let kept = head.getState().model;
  const store = (): void => {
    clearTimeout(timer);
    const { model } = head.getState();
    if (model === kept) return;
    kept = model;
    set(KEY, { model, at: Date.now() } satisfies Stored).catch((thrown: unknown) =>
      notify(notices, {
        tone: 'trouble',
        title: 'Your work is not being kept',
        text: `The browser's storage refused it (${thrown instanceof Error ? thrown.message : String(thrown)}). Save the model file before you leave.`,
      }),
    );
  };
  head.subscribe(() => {
    clearTimeout(timer);
    timer = setTimeout(store, SETTLE);
  });
  document.addEventListener('visibilitychange', store);
  window.addEventListener('pagehide', store);
}
