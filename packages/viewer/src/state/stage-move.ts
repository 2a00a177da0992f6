import type { HeadModel, Point } from '@flathead/solver';
import type { Workbench } from './workbench.ts';

/** Something of the head being moved on the stage. All of it is one step of undo. */
export interface StageMove {
  /** Pulls what is held to a point of the plan; it goes to the nearest place on the grid that it may have. */
  to(point: Point, grid: number): void;
  /** Keeps what was done. */
  end(): void;
  /** Puts everything back. */
  cancel(): void;
}

/** The model with the thing held pulled to a point. The same model where nothing changes. */
export type StageEdit = (now: HeadModel, point: Point, grid: number) => HeadModel;

/** Begins to move a thing; until it ends, answers are live. @param key of the grip that is held */
export function beginMove(
  { history, pointer }: Pick<Workbench, 'history' | 'pointer'>,
  key: string,
  edit: StageEdit,
): StageMove {
  const gesture = history.begin();
  pointer.setState({ dragged: key });
  const over = (how: 'end' | 'cancel') => (): void => {
    gesture[how]();
    pointer.setState({ dragged: null });
  };
  return {
    to: (point, grid) => gesture.change((now) => edit(now, point, grid)),
    end: over('end'),
    cancel: over('cancel'),
  };
}
