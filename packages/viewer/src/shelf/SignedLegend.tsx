import { useId } from 'react';
import { SIGNED_RAMP } from '../buffers/ramp.ts';
import { RampGradient } from '../charts/ColourDefs.tsx';
import { signedMicrometres } from '../format/number.ts';
import styles from './compare.module.css';

/** Colours of a difference from lower to higher, at most its largest; a word where there is none. @param top mm */
export function SignedLegend({ top }: { top: number }) {
  const id = useId();
  const none = Number(signedMicrometres(top)) === 0;
  return (
    <figure className={styles.legend} data-testid="comparison-legend">
      <figcaption>Difference, µm</figcaption>
      {none ? (
        'no difference'
      ) : (
        <>
          <svg className={styles.ramp} aria-hidden="true">
            <defs>
              <RampGradient id={id} colours={SIGNED_RAMP} />
            </defs>
            <rect width="100%" height="100%" fill={`url(#${id})`} />
          </svg>
          <p>
            <span>lower, {signedMicrometres(-top)}</span>
            <span>0</span>
            <span>{signedMicrometres(top)}, higher</span>
          </p>
        </>
      )}
    </figure>
  );
}
