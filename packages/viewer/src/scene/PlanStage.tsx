import { useElementSize } from '@mantine/hooks';
import { PlanMap } from '../charts/PlanMap.tsx';
import { useQuantity } from '../state/use-quantity.ts';
import { useRun, useView } from '../state/use-workbench.ts';
import { StageLegend } from './StageLegend.tsx';
import styles from './stage.module.css';

/** Instead of the stage where the browser has no WebGL: says so, and shows the head from above. */
export function PlanStage() {
  const solved = useRun((run) => run.solved);
  const full = useRun((run) => run.full);
  const caseName = useView((view) => view.caseName);
  const { quantity } = useQuantity();
  const { ref, width, height } = useElementSize();
  const shown = quantity === 'tension' ? (full ?? solved) : solved;
  return (
    <div className={styles.stage} data-testid="plan-stage">
      <p className={styles.planNote} role="status">
        <strong>No three-dimensional view here.</strong> The browser offers no WebGL: switch on hardware acceleration in
        its settings, or use another browser. Verdict, recipe and numbers work all the same; move fasteners by their x
        and y in the recipe.
      </p>
      <div ref={ref} className={styles.planRoom}>
        {shown && width > 0 && (
          <div className={styles.planFit} style={{ maxHeight: height }}>
            <PlanMap
              head={{ model: shown.model, result: shown.result, caseName }}
              quantity={quantity === 'tension' ? 'tension' : 'deviation'}
              width={Math.round(width)}
              label={`The head from above, coloured by its ${quantity === 'tension' ? 'tension' : 'bow'}`}
            />
          </div>
        )}
      </div>
      <div className={styles.below}>
        <div className={styles.legend}>
          <StageLegend />
        </div>
      </div>
    </div>
  );
}
