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
  /** Index of the fastener being dragged. */
  readonly dragged: number | null;
}

export function createPointerStore() {
  return createStore<PointerState>()(() => ({ hover: null, dragged: null }));
}

export type PointerStore = ReturnType<typeof createPointerStore>;
