import { useState } from 'react';
import { seatHeight } from '../buffers/seat-height.ts';
import { useExaggeration } from '../state/use-exaggeration.ts';
import { useRun, useWorkbench } from '../state/use-workbench.ts';
import { FastenerHandles } from './FastenerHandles.tsx';
import { Readout } from './Readout.tsx';
import { SeatLabels } from './SeatLabels.tsx';
import { SiteLabels } from './SiteLabels.tsx';
import { StageBoundary } from './StageBoundary.tsx';
import { StageCanvas } from './StageCanvas.tsx';
import { StageLegend } from './StageLegend.tsx';
import { StageTools } from './StageTools.tsx';
import styles from './stage.module.css';
import { createStageFrame, fieldPoint, StageFrameContext } from './stage-frame.ts';

/** The head to scale with its bow on it, the labels over it, and the tools of the stage. */
export function Stage() {
  const { pointer } = useWorkbench();
  const [frame] = useState(createStageFrame);
  const solved = useRun((run) => run.solved);
  const { factor } = useExaggeration();
  const sites = solved?.result.sites ?? [];
  /** The body hides a frame on the board side; beside the body the frame's own face is seen. */
  const uppermost = (clientX: number, clientY: number) => {
    if (solved === null) return null;
    const top = solved.model.body.thickness / 2;
    const found = fieldPoint(frame, clientX, clientY, top);
    const seat = found === null ? top : seatHeight(solved.model, [found.x, found.y]);
    return seat === top ? found : fieldPoint(frame, clientX, clientY, seat);
  };
  return (
    <StageFrameContext value={frame}>
      <div
        className={styles.stage}
        data-testid="stage"
        onPointerMove={(event) => {
          if (event.buttons !== 0 || event.target !== frame.canvas) {
            pointer.setState({ hover: null });
            return;
          }
          const found = uppermost(event.clientX, event.clientY);
          if (found === null) {
            pointer.setState({ hover: null });
            return;
          }
          const { left, top: upper } = event.currentTarget.getBoundingClientRect();
          const site = sites.find(
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
          {solved && <SiteLabels solved={solved} />}
          <SeatLabels />
          <FastenerHandles />
          <Readout />
        </StageBoundary>
        <StageTools />
        <p className={styles.scaleNote}>Grid 10 mm, deflection ×{factor}</p>
        <div className={styles.legend}>
          <StageLegend />
        </div>
      </div>
    </StageFrameContext>
  );
}
