import { createStore } from 'zustand/vanilla';

export interface ViewState {
  /** Load case shown; `null` = the worst. */
  readonly caseName: string | null;
  /** What the colours of the stage show. */
  readonly quantity: 'deviation' | 'tension';
  /** Whether the tables of the case shown are in sight. */
  readonly numbers: boolean;
  /** Factor on the deflection; `null` = chosen from the limit. */
  readonly exaggeration: number | null;
  readonly view: 'perspective' | 'above';
  /** Grows with every wish to see the whole head from its usual place. */
  readonly homeCalls: number;
  /** What lies over the page: the guided start of a new head, or the sheet of keys. */
  readonly dialog: 'start' | 'keys' | null;
  /** Fasteners opposite the dragged one move with it. */
  readonly mirror: boolean;
}

export function createViewStore() {
  return createStore<ViewState>()(() => ({
    caseName: null,
    quantity: 'deviation',
    numbers: false,
    exaggeration: null,
    view: 'perspective',
    homeCalls: 0,
    dialog: null,
    mirror: false,
  }));
}

export type ViewStore = ReturnType<typeof createViewStore>;
