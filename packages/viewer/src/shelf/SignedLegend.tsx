import { SIGNED_RAMP } from '../buffers/ramp.ts';
import { signedMicrometres } from '../format/number.ts';
import styles from './compare.module.css';

/** Colours of a difference from minus to plus its largest. @param top mm */
export function SignedLegend({ top }: { top: number }) {
  return (
    <span className={styles.legend}>
      {signedMicrometres(-top)}
      <span
        className={styles.ramp}
        style={{ backgroundImage: `linear-gradient(to right, ${SIGNED_RAMP.join(', ')})` }}
        aria-hidden="true"
      />
      {signedMicrometres(top)} µm
    </span>
  );
}
