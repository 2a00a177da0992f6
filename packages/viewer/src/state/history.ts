import type { HeadModel } from '@flathead/solver';
import type { HeadStore } from './head-store.ts';

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
  /** One change, one step of undo. */
  edit(change: Change): void;
  /** Begins a gesture; one that is still open is ended first. */
  begin(): Gesture;
  undo(): void;
  redo(): void;
}

/** Edits of a head store in steps of undo. */
export function createHistory(store: HeadStore): History {
  const steps = store.temporal;
  let open: Gesture | null = null;

  const apply = (change: Change): boolean => {
    const { model } = store.getState();
    const next = change(model);
    if (next === model) return false;
    store.setState({ model: next });
    return true;
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
    begin,
    undo() {
      open?.end();
      steps.getState().undo();
    },
    redo() {
      open?.end();
      steps.getState().redo();
    },
  };
}
