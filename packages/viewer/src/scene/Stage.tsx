import { useElementSize } from '@mantine/hooks';
import { type KeyboardEvent, useState } from 'react';
import { seatHeight } from '../buffers/seat-height.ts';
import type { Solved } from '../state/run-store.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import { Arrows } from './Arrows.tsx';
import { EditTools } from './EditTools.tsx';
import { FastenerHandles } from './FastenerHandles.tsx';
import { Ghost } from './Ghost.tsx';
import { Grips } from './Grips.tsx';
import { MirrorLines } from './MirrorLines.tsx';
import overlay from './overlay.module.css';
import { Readout } from './Readout.tsx';
import { SeatLabels } from './SeatLabels.tsx';
import { SectionDrawer } from './SectionDrawer.tsx';
import { SectionHandles, SectionPath } from './SectionOnStage.tsx';
import { SelectionCard } from './SelectionCard.tsx';
import { ShowTools } from './ShowTools.tsx';
import { SiteLabels } from './SiteLabels.tsx';
import { StageBoundary } from './StageBoundary.tsx';
import { StageCanvas } from './StageCanvas.tsx';
import { StageLegend } from './StageLegend.tsx';
import { StageTools } from './StageTools.tsx';
import styles from './stage.module.css';
import { createStageFrame, fieldPoint, type StageFrame, StageFrameContext } from './stage-frame.ts';
import { toolWatch } from './tool-watch.ts';

/** The head to scale with its bow on it, the labels over it, and the tools of the stage. */
export function Stage() {
  const { pointer, run } = useWorkbench();
  const [frame] = useState(createStageFrame);
  const { ref, height } = useElementSize();
  const [watchTools] = useState(() => toolWatch(frame));
  /** The body hides a frame on the board side; beside the body the frame's own face is seen. */
  const uppermost = ({ model }: Solved, clientX: number, clientY: number) => {
    const top = model.body.thickness / 2;
    const found = fieldPoint(frame, clientX, clientY, top);
    const seat = found === null ? top : seatHeight(model, [found.x, found.y]);
    return seat === top ? found : fieldPoint(frame, clientX, clientY, seat);
  };
  return (
    <StageFrameContext value={frame}>
      <div ref={ref} className={styles.bench}>
        <section
          className={styles.stage}
          data-testid="stage"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: its keys turn and zoom the view
          tabIndex={0}
          aria-label="Stage: the head with its bow. Arrow keys turn the view, plus and minus zoom, H shows the whole head."
          onKeyDown={(event) => event.target === event.currentTarget && lookAround(frame, event)}
          onPointerDown={(event) => event.target === frame.canvas && pointer.setState({ selected: null, typed: null })}
          onPointerMove={(event) => {
            const { solved } = run.getState();
            const free = event.buttons === 0 && event.target === frame.canvas;
            const found = free && solved !== null ? uppermost(solved, event.clientX, event.clientY) : null;
            if (solved === null || found === null) {
              pointer.setState({ hover: null });
              return;
            }
            const { left, top: upper } = event.currentTarget.getBoundingClientRect();
            const site = solved.result.sites.find(
              ({ centre, field }) =>
                Math.abs(found.x - centre[0]) <= field[0] / 2 && Math.abs(found.y - centre[1]) <= field[1] / 2,
            );
            pointer.setState({
              hover: {
                x: found.x,
                y: found.y,
                site: site?.name ?? null,
                screen: [event.clientX - left, event.clientY - upper],
              },
            });
          }}
          onPointerLeave={() => pointer.setState({ hover: null })}
        >
          <StageBoundary>
            <StageCanvas />
            <svg className={overlay.overlay} aria-hidden="true">
              <MirrorLines />
              <Ghost />
              <SectionPath />
              <Arrows />
            </svg>
            <SiteLabels />
            <SeatLabels />
            <SectionHandles />
            <Grips />
            <FastenerHandles />
            <SelectionCard />
            <Readout />
          </StageBoundary>
          <div className={styles.above} ref={watchTools}>
            <EditTools />
            <StageTools />
          </div>
          <div className={styles.below} ref={watchTools}>
            <div className={styles.legend} data-testid="legend">
              <StageLegend />
            </div>
            <ShowTools />
          </div>
        </section>
        <SectionDrawer room={height - STAGE_SHARE * window.innerHeight} />
      </div>
    </StageFrameContext>
  );
}

/** What the stage keeps of the height of the page, whatever opens under it. */
const STAGE_SHARE = 0.45;

/** Shares of a turn, or of the stage, for an arrow key; and the factor of plus and minus. */
const TURN = 0.05;
const ZOOM = 1.2;

function lookAround(frame: StageFrame, event: KeyboardEvent): void {
  const { key } = event;
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const turn = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[key];
  if (turn) frame.turn(turn[0] * TURN, turn[1] * TURN);
  else if (key === '+' || key === '=') frame.zoom(ZOOM);
  else if (key === '-') frame.zoom(1 / ZOOM);
  else return;
  event.preventDefault();
}
