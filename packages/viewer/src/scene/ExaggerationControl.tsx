import { Button, Slider } from '@mantine/core';
import { roundDown } from '../buffers/exaggeration.ts';
import { useExaggeration } from '../state/use-exaggeration.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import styles from './stage.module.css';

/** Largest factor, as a power of ten. */
const MOST = 4;

/** Factor on the deflection of the stage: none, to scale, or as much more as it takes to see it. */
export function ExaggerationControl() {
  const { view } = useWorkbench();
  const { factor, automatic, flat } = useExaggeration();
  return (
    <div className={styles.exaggeration} title={flat ? 'Seen from above the head is drawn flat.' : undefined}>
      <span>
        Deflection{' '}
        <span className={styles.factor} data-testid="exaggeration">
          {flat ? 'flat' : `×${factor}`}
        </span>
      </span>
      <Slider
        className={styles.slider}
        size={3}
        thumbSize={12}
        min={0}
        max={MOST}
        step={0.01}
        label={null}
        disabled={flat}
        thumbLabel="Factor on the deflection shown"
        value={factor < 1 ? 0 : Math.log10(factor)}
        onChange={(value) => view.setState({ exaggeration: value === 0 ? 1 : roundDown(10 ** value * 1.0001) })}
      />
      <Button
        variant={automatic ? 'light' : 'subtle'}
        size="compact-xs"
        disabled={flat}
        aria-pressed={automatic}
        onClick={() => view.setState({ exaggeration: null })}
      >
        Auto
      </Button>
    </div>
  );
}
