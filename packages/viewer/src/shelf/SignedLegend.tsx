import { useId } from 'react';
import { SIGNED_RAMP } from '../buffers/ramp.ts';
import { RampGradient } from '../charts/ColourDefs.tsx';
import { signedMicrometres } from '../format/number.ts';
import styles from './compare.module.css';

/** Colours of a difference from lower to higher, at most its largest; a word where there is none. @param top mm */
export function SignedLegend({ top }: { top: number }) {
  const id = useId();
  if (Number(signedMicrometres(top)) === 0) return <span className={styles.legend}>no difference</span>;
  return (
    <span className={styles.legend}>
      lower {signedMicrometres(-top)}
      <svg className={styles.ramp} aria-hidden="true">
        <defs>
          <RampGradient id={id} colours={SIGNED_RAMP} />
        </defs>
        <rect width="100%" height="100%" fill={`url(#${id})`} />
      </svg>
      {signedMicrometres(top)} higher, µm
    </span>
  );
}
