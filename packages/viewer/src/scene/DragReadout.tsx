import type { Point } from '@flathead/solver';
import { coordinateText, fieldText } from '../format/number.ts';
import { distancesOf } from '../state/distances.ts';
import { mirrorAxesOf } from '../state/mirror.ts';
import { pitchOf } from '../state/pitch-edit.ts';
import { useModel, useRefusal, useView } from '../state/use-workbench.ts';
import styles from './labels.module.css';

/** Where a thing is while it moves, how far from what matters, and whether the solver takes it there. */
export function DragReadout({ grip, at }: { grip: string; at: Point }) {
  const model = useModel((model) => model);
  const mirror = useView((view) => view.mirror);
  const refusal = useRefusal();
  const pitch = grip === 'pitch' ? pitchOf(model) : null;
  return (
    <>
      <span className={styles.place}>
        {pitch
          ? `${fieldText(pitch[0])} × ${fieldText(pitch[1])} mm`
          : `x ${coordinateText(rounded(at[0]))} y ${coordinateText(rounded(at[1]))}`}
      </span>
      {distancesOf(model, grip, mirrorAxesOf(mirror, model)).map(({ text, short }) => (
        <span key={text} className={styles.near} data-short={short || undefined}>
          {text}
        </span>
      ))}
      {refusal && (
        <span className={styles.near} data-short data-testid="drag-refused">
          not solvable here; last good answer shown
        </span>
      )}
    </>
  );
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}
