import { SIGNED_RAMP } from '../buffers/ramp.ts';
import { signedMicrometres } from '../format/number.ts';
import styles from './compare.module.css';

/** Colours of a difference from lower to higher, at most its largest; a word where there is none. @param top mm */
export function SignedLegend({ top }: { top: number }) {
  if (Number(signedMicrometres(top)) === 0) return <span className={styles.legend}>no difference</span>;
  return (
    <span className={styles.legend}>
      lower {signedMicrometres(-top)}
      <span
        className={styles.ramp}
        style={{ backgroundImage: `linear-gradient(to right, ${SIGNED_RAMP.join(', ')})` }}
        aria-hidden="true"
      />
      {signedMicrometres(top)} higher, µm
    </span>
  );
}
