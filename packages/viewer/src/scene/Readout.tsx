import { fieldSampler } from '../buffers/field-sampler.ts';
import { leastCovering } from '../buffers/least-covering.ts';
import { coordinateText, forceDigits, signedMicrometres, stressDigits } from '../format/number.ts';
import { shownCase } from '../state/shown-case.ts';
import { useQuantity } from '../state/use-quantity.ts';
import { usePointer, useRun, useView } from '../state/use-workbench.ts';
import { takenBoxes } from './LabelProjector.tsx';
import styles from './stage.module.css';
import { useStageFrame } from './stage-frame.ts';

/** From the pointer, and from the edge of the stage, px. */
const GAPS = { beside: 16, edge: 4 };

/** The field under the pointer, of the answer shown; beside the numbers that stand on the head. */
export function Readout() {
  const stage = useStageFrame();
  const hover = usePointer((pointer) => pointer.hover);
  const result = useRun(({ solved }) => solved?.result);
  const caseName = useView((view) => view.caseName);
  const { tension, contact } = useQuantity();
  if (hover === null || !result) return null;
  const { x, y, site, screen } = hover;
  const deviation = fieldSampler(result.mesh, shownCase(result, caseName).deviation).at(x, y);
  if (deviation === null) return null;
  const stress = tension === null ? null : fieldSampler(result.mesh, tension.bodyTension).at(x, y);
  const lost = contact === null || site === null ? null : fieldSampler(result.mesh, contact.lost).at(x, y);
  const value =
    stress !== null
      ? `${stressDigits(stress)} MPa`
      : lost !== null
        ? `${forceDigits(Math.max(0, lost))} N lost`
        : `${signedMicrometres(deviation)} µm`;
  return (
    <output
      className={styles.readout}
      data-testid="readout"
      ref={(element) => {
        if (element === null || stage.canvas === null) return;
        const own = { width: element.offsetWidth, height: element.offsetHeight };
        const room = { width: stage.canvas.clientWidth, height: stage.canvas.clientHeight };
        const [left, top] = leastCovering(screen, own, room, takenBoxes(stage), GAPS);
        element.style.transform = `translate(${left}px, ${top}px)`;
      }}
    >
      <strong>{value}</strong>
      <span>
        {site ? `site ${site}` : 'outside the sites'}, x {coordinateText(tenth(x))}, y {coordinateText(tenth(y))} mm
      </span>
    </output>
  );
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
