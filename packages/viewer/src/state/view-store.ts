import { createStore } from 'zustand/vanilla';

export interface ViewState {
  /** Load case shown; `null` = the worst. */
  readonly caseName: string | null;
  /** Factor on the deflection; `null` = chosen from the limit. */
  readonly exaggeration: number | null;
  readonly view: 'perspective' | 'above';
  /** Grows with every wish to see the whole head from its usual place. */
  readonly homeCalls: number;
  /** Fasteners opposite the dragged one move with it. */
  readonly mirror: boolean;
}

export function createViewStore() {
  return createStore<ViewState>()(() => ({
    caseName: null,
    exaggeration: null,
    view: 'perspective',
    homeCalls: 0,
    mirror: false,
  }));
}

export type ViewStore = ReturnType<typeof createViewStore>;
