import { useRef } from 'react';
import { screwSize } from '../buffers/screw-size.ts';
import { seatHeight } from '../buffers/seat-height.ts';
import { forceDigits } from '../format/number.ts';
import { beginFastenerMove, type FastenerMove } from '../state/fastener-moves.ts';
import { shownCase } from '../state/shown-case.ts';
import { useModel, usePointer, useRun, useView, useWorkbench } from '../state/use-workbench.ts';
import { DragReadout } from './DragReadout.tsx';
import styles from './labels.module.css';
import { deviationAt, planPoint, useStageFrame } from './stage-frame.ts';

const NUDGES: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
/** Steps of the arrow keys, mm: alone, and with shift. */
const STEP = 0.5;
const FINE_STEP = 0.1;

/** Handle of one fastener. A drag or a run of nudges is one step of undo. */
export function FastenerHandle({ index }: { index: number }) {
  const workbench = useWorkbench();
  const stage = useStageFrame();
  const fastener = useModel((model) => model.fasteners[index]);
  const z = useModel((model) => {
    const here = model.fasteners[index];
    return here ? seatHeight(model, here.at) + screwSize(here).height : 0;
  });
  const mirror = useView((view) => view.mirror);
  const dragged = usePointer((pointer) => pointer.dragged === index);
  const caseName = useView((view) => view.caseName);
  const force = useRun(({ solved }) =>
    solved
      ? shownCase(solved.result, caseName).fasteners.find((other) => other.name === fastener?.name)?.reaction
      : undefined,
  );
  const move = useRef<FastenerMove | null>(null);
  const grip = useRef<{ readonly offset: readonly [number, number]; readonly z: number } | null>(null);
  if (fastener === undefined) return null;
  const { name, at } = fastener;
  const held = force === undefined || dragged ? '' : ` ${forceDigits(-force)} N`;

  const begin = (): FastenerMove => {
    move.current ??= beginFastenerMove(workbench, index, mirror);
    return move.current;
  };
  const finish = (how: 'end' | 'cancel'): void => {
    move.current?.[how]();
    move.current = null;
    grip.current = null;
  };

  return (
    <button
      ref={(element) => {
        if (element === null) return;
        stage.labels.set(`fastener ${index}`, { element, kind: 'fastener', at: [at[0], at[1]], z, weight: 0 });
        stage.redraw();
        return () => {
          stage.labels.delete(`fastener ${index}`);
        };
      }}
      type="button"
      className={styles.handle}
      data-testid={`fastener-${name}`}
      data-dragged={dragged || undefined}
      aria-label={`Fastener ${name}${held} at x ${at[0]}, y ${at[1]} mm. Drag it, or move it with the arrow keys.`}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.stopPropagation();
        const seat = z + stage.scale.value * deviationAt(stage, [at[0], at[1]]);
        const under = planPoint(stage, event.clientX, event.clientY, seat);
        if (under === null) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        grip.current = { offset: [at[0] - under[0], at[1] - under[1]], z: seat };
        begin();
      }}
      onPointerMove={(event) => {
        if (grip.current === null) return;
        const under = planPoint(stage, event.clientX, event.clientY, grip.current.z);
        if (under === null) return;
        const { offset } = grip.current;
        begin().to([under[0] + offset[0], under[1] + offset[1]]);
      }}
      onPointerUp={() => finish('end')}
      onLostPointerCapture={() => finish('end')}
      onKeyDown={(event) => {
        if (event.key === 'Escape') finish('cancel');
        const nudge = NUDGES[event.key];
        if (nudge === undefined || grip.current !== null) return;
        event.preventDefault();
        const step = event.shiftKey ? FINE_STEP : STEP;
        begin().to([at[0] + nudge[0] * step, at[1] + nudge[1] * step]);
      }}
      onKeyUp={() => grip.current === null && finish('end')}
      onBlur={() => finish('end')}
    >
      <span className={styles.tag}>
        <span className={styles.called}>{name}</span>
        {held !== '' && <span className={styles.force}>{held}</span>}
        {dragged && <DragReadout fastener={fastener} />}
      </span>
    </button>
  );
}
