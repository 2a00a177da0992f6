import type { Point } from '@flathead/solver';
import { lengthOf, pointAlong } from '../buffers/section-profile.ts';
import { fieldText } from '../format/number.ts';
import { beginSectionMove, holdOf, sectionLine } from '../state/section-line.ts';
import { useRun, useView, useWorkbench } from '../state/use-workbench.ts';
import styles from './overlay.module.css';
import { StageHandle } from './StageHandle.tsx';
import { useStageFrame } from './stage-frame.ts';

/** Pieces in which the line follows the head. */
const PIECES = 60;
const ENDS = [
  { part: 'from', name: 'Start' },
  { part: 'whole', name: 'Grip' },
  { part: 'to', name: 'End' },
] as const;

function useSection() {
  const caseName = useView((view) => view.caseName);
  const chosen = useView((view) => view.section);
  const open = useView((view) => view.sectionOpen);
  const solved = useRun((run) => run.solved);
  if (!open || solved === null) return null;
  return { line: sectionLine(solved.result, caseName, chosen), z: solved.model.body.thickness / 2 };
}

/** The line of the section over the head. */
export function SectionPath() {
  const stage = useStageFrame();
  const section = useSection();
  if (section === null) return null;
  const { line, z } = section;
  const length = lengthOf(line);
  const run = Array.from({ length: PIECES + 1 }, (_, i) => pointAlong(line, (i / PIECES) * length));
  return ['halo', 'section'].map((name) => (
    <path
      key={name}
      className={styles[name]}
      ref={(element) => {
        if (element === null) return;
        stage.paths.set(name, { element, runs: [run], z });
        stage.redraw();
        return () => {
          stage.paths.delete(name);
        };
      }}
    />
  ));
}

/** Handles at its ends, and one for all of it. */
export function SectionHandles() {
  const workbench = useWorkbench();
  const section = useSection();
  if (section === null) return null;
  const { line, z } = section;
  const places: Record<'from' | 'to' | 'whole', Point> = {
    from: line.from,
    to: line.to,
    whole: holdOf(line),
  };
  return (
    <fieldset className={styles.layer} aria-label="Section line">
      {ENDS.map(({ part, name }) => {
        const [x, y] = places[part].map((value) => Math.round(value * 1000) / 1000);
        return (
          <StageHandle
            key={part}
            grip={`section ${part}`}
            at={[x, y]}
            z={z}
            form="section"
            testId={`section-${part}`}
            label={`${name} of the section line at x ${fieldText(x)}, y ${fieldText(y)} mm. Drag it, or move it with the arrow keys.`}
            begin={() => beginSectionMove(workbench, part)}
          />
        );
      })}
    </fieldset>
  );
}
