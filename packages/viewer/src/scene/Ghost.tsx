import { type HeadModel, type Point, type Ring, siteLayout } from '@flathead/solver';
import { displayRing } from '../buffers/display-ring.ts';
import { siteRings } from '../buffers/plan-lines.ts';
import { gripsOf, indexOf } from '../state/grips.ts';
import { ribLines, ribRing } from '../state/rib-lines.ts';
import { useModel, usePointer } from '../state/use-workbench.ts';
import styles from './overlay.module.css';
import { useStageFrame } from './stage-frame.ts';

/** Outline of the chosen thing as edited, at once; the solid head follows with the answer. */
export function Ghost() {
  const stage = useStageFrame();
  const model = useModel((model) => model);
  const selected = usePointer((pointer) => pointer.selected);
  if (selected === null) return null;
  const grip = gripsOf(model, selected).find(({ key }) => key === selected);
  if (grip === undefined) return null;
  const runs = ringsOf(model, selected).map((ring): Point[] => [...ring, ring[0]]);
  return (
    <path
      className={styles.ghost}
      ref={(element) => {
        if (element === null) return;
        stage.paths.set('ghost', { element, runs, z: grip.z, still: !grip.hangs });
        stage.redraw();
        return () => {
          stage.paths.delete('ghost');
        };
      }}
    />
  );
}

function ringsOf(model: HeadModel, key: string): Ring[] {
  const index = indexOf(key);
  if (key.startsWith('keepOut')) return [displayRing(model.keepOuts?.[index]?.shape ?? { circle: 1 }) ?? []];
  if (key.startsWith('rib')) {
    const rib = model.frame?.ribs?.[index];
    return rib ? ribLines(model, rib).map((line) => ribRing(line, rib.width)) : [];
  }
  try {
    return key === 'pitch' ? siteRings(siteLayout(model.sites)) : [];
  } catch {
    return [];
  }
}
