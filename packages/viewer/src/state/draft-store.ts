import type { HeadModel } from '@flathead/solver';
import { createStore } from 'zustand/vanilla';
import { valueAt } from './set-value.ts';

/** Text in a field that did not become a value. */
export interface Draft {
  readonly text: string;
  /** What is wrong with it. */
  readonly message: string;
  /** Value of the model when it was typed; once that changes, the draft is obsolete. */
  readonly over: unknown;
  /** A number just begun, such as a lone minus: said to be wrong only when the field is left. */
  readonly begun: boolean;
}

/** Drafts by path in the model. */
export interface DraftState {
  readonly drafts: Readonly<Record<string, Draft>>;
}

export function createDraftStore() {
  return createStore<DraftState>()(() => ({ drafts: {} }));
}

export type DraftStore = ReturnType<typeof createDraftStore>;

export function keepDraft(store: DraftStore, path: string, draft: Draft): void {
  store.setState(({ drafts }) => ({ drafts: { ...drafts, [path]: draft } }));
}

export function dropDraft(store: DraftStore, path: string): void {
  store.setState((state) => {
    if (!(path in state.drafts)) return state;
    const { [path]: _, ...drafts } = state.drafts;
    return { drafts };
  });
}

/** Whether the model still has the value that the draft was typed over; a list is the same while its items are. */
export function isOver({ over }: Draft, value: unknown): boolean {
  if (!Array.isArray(over) || !Array.isArray(value)) return over === value;
  return over.length === value.length && over.every((item, i) => item === value[i]);
}

/** Path of the first field whose text did not reach the model. */
export function firstDraft({ drafts }: DraftState, model: HeadModel): string | null {
  return Object.entries(drafts).find(([path, draft]) => isOver(draft, valueAt(model, path)))?.[0] ?? null;
}

/** Whether a field of the model holds text that did not reach it. */
export function hasDrafts({ drafts }: DraftState, model: HeadModel): boolean {
  return firstDraft({ drafts }, model) !== null;
}
