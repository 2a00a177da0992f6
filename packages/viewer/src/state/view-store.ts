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
  /** Fasteners opposite the dragged one move with it. */
  readonly mirror: boolean;
  /** Whether the cards of the shelf are in sight; `null` = when there are several variants. */
  readonly shelf: boolean | null;
  /** Variant that the others are compared with; `null`, or one that is gone = the first. */
  readonly reference: string | null;
  /** Whether the variant on the bench is compared with another one in full. */
  readonly comparing: boolean;
}

export function createViewStore() {
  return createStore<ViewState>()(() => ({
    caseName: null,
    quantity: 'deviation',
    numbers: false,
    exaggeration: null,
    view: 'perspective',
    homeCalls: 0,
    mirror: false,
    shelf: null,
    reference: null,
    comparing: false,
  }));
}

export type ViewStore = ReturnType<typeof createViewStore>;
