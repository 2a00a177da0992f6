import type { HeadModel, Point } from '@flathead/solver';
import { mirrorAxesOf } from '../state/mirror.ts';
import { boxOf } from '../state/shape-box.ts';
import { useModel, usePointer, useView } from '../state/use-workbench.ts';
import styles from './overlay.module.css';
import { useStageFrame } from './stage-frame.ts';

/** How far the lines stand out of the head, mm. */
const OUT = 4;

/** The lines across which a chosen thing takes what lies opposite along. */
export function MirrorLines() {
  const stage = useStageFrame();
  const model = useModel((model) => model);
  const chosen = useView((view) => view.mirror);
  const held = usePointer(({ selected }) => selected !== null && /^(fastener|rib|keepOut)/.test(selected));
  const axes = mirrorAxesOf(chosen, model);
  if (!held || axes === null) return null;
  return (
    <path
      className={styles.mirror}
      data-testid="mirror-lines"
      data-axes={axes}
      ref={(element) => {
        if (element === null) return;
        stage.paths.set('mirror', { element, runs: linesOf(model, axes), z: model.body.thickness / 2, still: true });
        stage.redraw();
        return () => {
          stage.paths.delete('mirror');
        };
      }}
    />
  );
}

function linesOf({ body, frame, sites: { origin = [0, 0] } }: HeadModel, axes: 'x' | 'y' | 'both'): Point[][] {
  const [width, height] = boxOf(frame ? frame.outer : body.outline);
  const [cx, cy] = origin;
  const [dx, dy] = [width / 2 + OUT, height / 2 + OUT];
  const upright: Point[] = [
    [cx, cy - dy],
    [cx, cy + dy],
  ];
  const level: Point[] = [
    [cx - dx, cy],
    [cx + dx, cy],
  ];
  return [...(axes === 'y' ? [] : [upright]), ...(axes === 'x' ? [] : [level])];
}
