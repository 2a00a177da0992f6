import { createStore } from 'zustand/vanilla';

/** Fields whose text did not become a value: path in the model -> what is wrong with it. */
export interface DraftState {
  readonly refused: Readonly<Record<string, string>>;
}

export function createDraftStore() {
  return createStore<DraftState>()(() => ({ refused: {} }));
}

export type DraftStore = ReturnType<typeof createDraftStore>;

export function refuseDraft(store: DraftStore, path: string, message: string): void {
  store.setState(({ refused }) => ({ refused: { ...refused, [path]: message } }));
}

export function settleDraft(store: DraftStore, path: string): void {
  store.setState((state) => {
    if (!(path in state.refused)) return state;
    const { [path]: _, ...refused } = state.refused;
    return { refused };
  });
}
