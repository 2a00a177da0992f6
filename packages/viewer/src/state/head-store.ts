import type { HeadModel } from '@flathead/solver';
import { temporal } from 'zundo';
import { createStore } from 'zustand/vanilla';

export interface HeadState {
  /** The head as edited: always right by the schema, not always solvable. */
  readonly model: HeadModel;
}

const MOST_STEPS = 200;

/** The one model of the page, with its past and future. Change it through {@link createHistory}. */
export function createHeadStore(model: HeadModel) {
  return createStore<HeadState>()(
    temporal(() => ({ model }), { limit: MOST_STEPS, equality: (past, present) => past.model === present.model }),
  );
}

export type HeadStore = ReturnType<typeof createHeadStore>;
