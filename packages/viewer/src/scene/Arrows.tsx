import { screwSize } from '../buffers/screw-size.ts';
import { seatHeight } from '../buffers/seat-height.ts';
import { shownCase } from '../state/shown-case.ts';
import { useModel, useRun, useView } from '../state/use-workbench.ts';
import styles from './overlay.module.css';
import { useStageFrame } from './stage-frame.ts';

/** Length of the longest arrow, mm. */
const LONGEST = 14;
/** From the screw head to the arrow, mm. */
const CLEAR = 0.5;

/**
 * What the fasteners carry: an arrow each, as long as its force, down where it holds the head back to the board, up and
 * hollow where it pushes it away.
 */
export function Arrows() {
  const stage = useStageFrame();
  const model = useModel((model) => model);
  const shown = useView((view) => view.arrows);
  const caseName = useView((view) => view.caseName);
  const endOn = useView((view) => view.view === 'above');
  const solved = useRun((run) => run.solved);
  if (!shown || solved === null) return null;
  const { fasteners } = shownCase(solved.result, caseName);
  const largest = Math.max(...fasteners.map(({ reaction }) => Math.abs(reaction)), 1e-9);
  return fasteners.map(({ name, reaction }, i) => {
    const fastener = model.fasteners.find((other) => other.name === name);
    if (fastener === undefined || Math.abs(reaction) < 1e-3 * largest) return null;
    const at = fastener.at;
    const z = seatHeight(model, at) + screwSize(fastener).height + CLEAR;
    const down = reaction < 0;
    return (
      <g
        key={name}
        className={styles.arrow}
        data-testid={`arrow-${name}`}
        data-sense={down ? 'pull' : 'push'}
        ref={(element) => {
          const [shaft, tip] = element?.children ?? [];
          if (!(shaft instanceof SVGPathElement && tip instanceof SVGPathElement)) return;
          const length = (LONGEST * Math.abs(reaction)) / largest;
          stage.arrows.set(`${i}`, { shaft, tip, at, z, length, down, endOn });
          stage.redraw();
          return () => {
            stage.arrows.delete(`${i}`);
          };
        }}
      >
        <path className={styles.shaft} />
        <path className={styles.tip} />
      </g>
    );
  });
}
