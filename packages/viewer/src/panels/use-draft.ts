import { useEffect } from 'react';
import { useStore } from 'zustand';
import { type Draft, dropDraft, isOver, keepDraft } from '../state/draft-store.ts';
import { valueAt } from '../state/set-value.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';

/** The draft of a field, if what was typed into it last did not become its value; gone with the field. */
export function useDraft(path: string): {
  readonly draft: Draft | undefined;
  keep(draft: Omit<Draft, 'over'>): void;
  drop(): void;
} {
  const { drafts } = useWorkbench();
  const value = useModel((model) => valueAt(model, path));
  const kept = useStore(drafts, (state) => state.drafts[path]);
  useEffect(() => () => dropDraft(drafts, path), [drafts, path]);
  return {
    draft: kept && isOver(kept, value) ? kept : undefined,
    keep: (draft) => keepDraft(drafts, path, { ...draft, over: value }),
    drop: () => dropDraft(drafts, path),
  };
}
