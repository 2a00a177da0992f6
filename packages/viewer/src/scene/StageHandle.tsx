import type { Point } from '@flathead/solver';
import { type ReactNode, useEffect, useRef } from 'react';
import { beginGrip } from '../state/grips.ts';
import type { StageMove } from '../state/stage-move.ts';
import { removeThing } from '../state/things.ts';
import { usePointer, useWorkbench } from '../state/use-workbench.ts';
import styles from './labels.module.css';
import { deviationAt, planPoint, useStageFrame } from './stage-frame.ts';

const NUDGES: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
/** Steps of the arrow keys, mm: alone where the grid is finer, and with shift. */
const STEP = 0.5;
const FINE_STEP = 0.1;
/** Keys that begin a number. */
const BEGINS_NUMBER = /^[\d.,+\-\u2212]$/;

interface StageHandleProps {
  /** Key of the grip. */
  readonly grip: string;
  readonly at: Point;
  /** Height at rest, mm. */
  readonly z: number;
  /** Whether it stays as the head bows. */
  readonly still?: boolean;
  readonly nudge?: readonly [Point, Point] | undefined;
  /** Of what is drawn there, mm; no text covers it. */
  readonly radius?: number;
  readonly form: string;
  /** Whether it moves along with the chosen one. */
  readonly linked?: boolean;
  readonly label: string;
  readonly testId: string;
  /** Begins the move; that of the model's thing if left out. */
  readonly begin?: () => StageMove;
  readonly children?: ReactNode;
}

/**
 * A grip on the stage: dragged with the mouse, nudged with the arrow keys, typed to a place. A drag or a run of nudges is
 * one step of undo.
 */
export function StageHandle(props: StageHandleProps) {
  const { grip, at, z, still = false, nudge, radius, form, linked = false, label, testId, children } = props;
  const workbench = useWorkbench();
  const { pointer, view } = workbench;
  const stage = useStageFrame();
  const dragged = usePointer((state) => state.dragged === grip);
  const selected = usePointer((state) => state.selected === grip);
  const move = useRef<StageMove | null>(null);
  const held = useRef<{ readonly offset: Point; readonly z: number } | null>(null);
  const button = useRef<HTMLButtonElement | null>(null);

  // A thing that was just added is chosen before its handle is there.
  useEffect(() => {
    if (pointer.getState().selected === grip) button.current?.focus({ preventScroll: true });
  }, [pointer, grip]);

  const begin = (): StageMove => {
    move.current ??= props.begin?.() ?? beginGrip(workbench, grip);
    return move.current;
  };
  const finish = (how: 'end' | 'cancel'): void => {
    move.current?.[how]();
    move.current = null;
    held.current = null;
  };

  return (
    <button
      ref={(element) => {
        button.current = element;
        if (element === null) return;
        stage.labels.set(grip, { element, kind: 'grip', at, z, still, weight: 0, ...(radius && { radius }) });
        stage.redraw();
        return () => {
          stage.labels.delete(grip);
        };
      }}
      type="button"
      className={styles.handle}
      data-testid={testId}
      data-form={form}
      data-dragged={dragged || undefined}
      data-selected={selected || undefined}
      data-linked={linked || undefined}
      aria-label={label}
      title={form === 'fastener' ? undefined : label.split('.')[0]}
      onFocus={() => pointer.setState({ selected: grip, typed: null })}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.stopPropagation();
        const height = still ? z : z + stage.scale.value * deviationAt(stage, at);
        const under = planPoint(stage, event.clientX, event.clientY, height);
        if (under === null) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        held.current = { offset: [at[0] - under[0], at[1] - under[1]], z: height };
        pointer.setState({ selected: grip, typed: null });
        begin();
      }}
      onPointerMove={(event) => {
        if (held.current === null) return;
        const under = planPoint(stage, event.clientX, event.clientY, held.current.z);
        if (under === null) return;
        const { offset } = held.current;
        begin().to([under[0] + offset[0], under[1] + offset[1]], view.getState().grid);
      }}
      onPointerUp={() => finish('end')}
      onLostPointerCapture={() => finish('end')}
      onKeyDown={(event) => {
        if (event.ctrlKey || event.metaKey || event.altKey) return;
        if (event.key === 'Escape') {
          if (move.current === null) pointer.setState({ selected: null });
          finish('cancel');
          return;
        }
        if (event.key === 'Delete' || event.key === 'Backspace') {
          finish('cancel');
          removeThing(workbench, grip);
          return;
        }
        if (event.key === 'Enter' || BEGINS_NUMBER.test(event.key)) {
          event.preventDefault();
          finish('end');
          pointer.setState({ selected: grip, typed: event.key === 'Enter' ? '' : event.key });
          return;
        }
        const wish = NUDGES[event.key];
        if (wish === undefined || held.current !== null) return;
        event.preventDefault();
        const { grid } = view.getState();
        const step = event.shiftKey ? FINE_STEP : Math.max(STEP, grid);
        const [alongX, alongY] = nudge ?? [
          [1, 0],
          [0, 1],
        ];
        const by = (axis: 0 | 1) => step * (wish[0] * alongX[axis] + wish[1] * alongY[axis]);
        begin().to([at[0] + by(0), at[1] + by(1)], Math.min(grid, step));
      }}
      onKeyUp={() => held.current === null && finish('end')}
      onBlur={() => finish('end')}
    >
      {children}
    </button>
  );
}
