import { createStore } from 'zustand/vanilla';
import type { SectionLine } from '../buffers/section-profile.ts';
import type { MirrorChoice } from './mirror.ts';

/** What the colours of the stage can show. */
export type Quantity = 'deviation' | 'tension' | 'contact';

export interface ViewState {
  /** Load case shown; `null` = the worst. */
  readonly caseName: string | null;
  /** What the colours of the stage show. */
  readonly quantity: Quantity;
  /** Whether the colours of the bow tell away from the board and towards it apart. */
  readonly signed: boolean;
  /** Whether arrows show what the fasteners carry. */
  readonly arrows: boolean;
  /** The deflection swings between none and full. */
  readonly playing: boolean;
  /** Whether the tables of the case shown are in sight. */
  readonly numbers: boolean;
  /** Factor on the deflection; `null` = chosen from the limit. */
  readonly exaggeration: number | null;
  readonly view: 'perspective' | 'above';
  /** Grows with every wish to see the whole head from its usual place. */
  readonly homeCalls: number;
  /** What lies over the page: the guided start of a new head, the sheet of keys, or files of other programs. */
  readonly dialog: 'start' | 'keys' | 'import' | 'export' | null;
  /** Across which lines what lies opposite a thing moves with it; `null` = those of the pattern of the fasteners. */
  readonly mirror: MirrorChoice | null;
  /** Grid that drags keep to, mm; 0 = none. */
  readonly grid: number;
  /** Whether the section under the stage is in sight. */
  readonly sectionOpen: boolean;
  /** Line of the section; `null` = the row of the worst site. */
  readonly section: SectionLine | null;
  /** Whether the cards of the shelf are in sight; `null` = when there are several variants. */
  readonly shelf: boolean | null;
  /** Variant that the others are compared with; `null`, or one that is gone = each with the first of its line. */
  readonly reference: string | null;
  /** Whether the variant on the bench is compared with another one in full. */
  readonly comparing: boolean;
}

export function createViewStore() {
  return createStore<ViewState>()(() => ({
    caseName: null,
    quantity: 'deviation',
    signed: false,
    arrows: false,
    playing: false,
    numbers: false,
    exaggeration: null,
    view: 'perspective',
    homeCalls: 0,
    dialog: null,
    mirror: null,
    grid: 0.1,
    sectionOpen: false,
    section: null,
    shelf: null,
    reference: null,
    comparing: false,
  }));
}

export type ViewStore = ReturnType<typeof createViewStore>;
