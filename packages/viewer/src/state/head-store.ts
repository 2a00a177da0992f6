import type { HeadModel } from '@flathead/solver';
import { temporal } from 'zundo';
import { createStore } from 'zustand/vanilla';
import { benchModel, type Workbook, workbookOf } from './workbook.ts';

export interface HeadState {
  readonly book: Workbook;
  /** The head on the bench as edited: always right by the schema, not always solvable. */
  readonly model: HeadModel;
}

const MOST_STEPS = 200;

/** The document of the page, with its past and future. Change it through {@link createHistory}. */
export function createHeadStore(start: HeadModel | Workbook) {
  const book = 'variants' in start ? start : workbookOf([start]);
  return createStore<HeadState>()(
    temporal(() => stateOf(book), {
      limit: MOST_STEPS,
      // Which variant is on the bench is kept with a step but makes none.
      equality: (past, present) => past.book.variants === present.book.variants,
    }),
  );
}

export type HeadStore = ReturnType<typeof createHeadStore>;

export function stateOf(book: Workbook): HeadState {
  return { book, model: benchModel(book) };
}
