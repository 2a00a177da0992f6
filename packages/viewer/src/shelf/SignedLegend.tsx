import { useId } from 'react';
import { SIGNED_RAMP } from '../buffers/ramp.ts';
import { RampGradient } from '../charts/ColourDefs.tsx';
import { signedMicrometres } from '../format/number.ts';
import styles from './compare.module.css';

/** Colours of a difference from minus to plus its largest. @param top mm */
export function SignedLegend({ top }: { top: number }) {
  const id = useId();
  return (
    <span className={styles.legend}>
      {signedMicrometres(-top)}
      <svg className={styles.ramp} aria-hidden="true">
        <defs>
          <RampGradient id={id} colours={SIGNED_RAMP} />
        </defs>
        <rect width="100%" height="100%" fill={`url(#${id})`} />
      </svg>
      {signedMicrometres(top)} µm
    </span>
  );
}
