import { createStore } from 'zustand/vanilla';

/** Place of the head under the pointer, mm. */
export interface Hover {
  readonly x: number;
  readonly y: number;
  /** Site that the point lies in. */
  readonly site: string | null;
  /** Place on the stage, px from its upper left corner. */
  readonly screen: readonly [left: number, top: number];
}

export interface PointerState {
  readonly hover: Hover | null;
  /** Key of the grip being dragged, such as `fastener 1`. */
  readonly dragged: string | null;
  /** Key of the grip chosen last, whose card is open. */
  readonly selected: string | null;
  /** Text typed on a grip, to begin the first field of its card with. */
  readonly typed: string | null;
}

export function createPointerStore() {
  return createStore<PointerState>()(() => ({ hover: null, dragged: null, selected: null, typed: null }));
}

export type PointerStore = ReturnType<typeof createPointerStore>;
