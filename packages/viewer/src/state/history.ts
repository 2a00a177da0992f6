import type { HeadModel } from '@flathead/solver';
import { type HeadStore, stateOf } from './head-store.ts';
import { type Workbook, withBench, withChangedOnBench, withModel } from './workbook.ts';

export type Change = (model: HeadModel) => HeadModel;

/** A run of changes that undo takes back as one: a drag, or the typing of one number. */
export interface Gesture {
  change(change: Change): void;
  /** Whether it still takes changes. */
  isOpen(): boolean;
  /** Keeps what was done. */
  end(): void;
  /** Restores the model from before the gesture and forgets it. */
  cancel(): void;
}

export interface History {
  /** One change of the head on the bench, one step of undo. */
  edit(change: Change): void;
  /** Changes what the last step made of the head on the bench; a step that then changes nothing goes. */
  amend(change: Change): void;
  /** One change of the workbook, one step of undo unless it only puts another variant on the bench. */
  editBook(change: (book: Workbook) => Workbook): void;
  /** Puts a variant on the bench; no step of undo. */
  putOnBench(id: string): void;
  /** Begins a gesture; one that is still open is ended first. */
  begin(): Gesture;
  undo(): void;
  redo(): void;
}

/** Edits of the document in steps of undo. */
export function createHistory(store: HeadStore): History {
  const steps = store.temporal;
  let open: Gesture | null = null;

  const applyToBook = (change: (book: Workbook) => Workbook): boolean => {
    const { book } = store.getState();
    const next = change(book);
    if (next === book) return false;
    store.setState(stateOf(next));
    return true;
  };
  const apply = (change: Change): boolean =>
    applyToBook((book) => withModel(book, book.bench, change(store.getState().model)));
  const editBook = (change: (book: Workbook) => Workbook): void => {
    open?.end();
    applyToBook(change);
  };

  const step = (which: 'undo' | 'redo') => (): void => {
    open?.end();
    const before = store.getState().book;
    steps.getState()[which]();
    applyToBook((book) => withChangedOnBench(book, before));
  };

  const begin = (): Gesture => {
    open?.end();
    let changed = false;
    const gesture: Gesture = {
      change(change) {
        if (open !== gesture || !apply(change) || changed) return;
        // The first change is tracked, so that the model from before the gesture is what undo returns to.
        changed = true;
        steps.getState().pause();
      },
      isOpen: () => open === gesture,
      end() {
        if (open !== gesture) return;
        open = null;
        steps.getState().resume();
      },
      cancel() {
        if (open !== gesture) return;
        gesture.end();
        if (!changed) return;
        steps.getState().undo();
        steps.setState({ futureStates: steps.getState().futureStates.slice(0, -1) });
      },
    };
    open = gesture;
    return gesture;
  };

  return {
    edit(change) {
      open?.end();
      apply(change);
    },
    amend(change) {
      open?.end();
      steps.getState().pause();
      apply(change);
      steps.getState().resume();
      const { pastStates } = steps.getState();
      const last = pastStates.at(-1)?.book?.variants;
      const { variants } = store.getState().book;
      const isSame = last?.length === variants.length && variants.every(({ model }, i) => model === last[i].model);
      if (isSame) steps.setState({ pastStates: pastStates.slice(0, -1) });
    },
    editBook,
    putOnBench: (id) => editBook((book) => withBench(book, id)),
    begin,
    undo: step('undo'),
    redo: step('redo'),
  };
}
