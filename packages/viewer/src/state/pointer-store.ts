import { createStore } from 'zustand/vanilla';

/** Field under the pointer. */
export interface Hover {
  readonly x: number;
  readonly y: number;
  /** Signed deviation from the fastener plane, mm. */
  readonly deviation: number;
  /** Site that the point lies in. */
  readonly site: string | null;
  /** Place on the stage, px from its upper left corner. */
  readonly screen: readonly [left: number, top: number];
}

export interface PointerState {
  readonly hover: Hover | null;
  /** Index of the fastener being dragged. */
  readonly dragged: number | null;
}

export function createPointerStore() {
  return createStore<PointerState>()(() => ({ hover: null, dragged: null }));
}

export type PointerStore = ReturnType<typeof createPointerStore>;
