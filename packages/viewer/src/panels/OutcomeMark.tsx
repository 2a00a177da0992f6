import type { Outcome } from '@flathead/solver';
import { Icon } from '../app/icons.tsx';
import styles from './verdict.module.css';

const WORDS: Readonly<Record<Outcome, string>> = { pass: 'Pass', marginal: 'Marginal', fail: 'Fail' };

/** The outcome by word, shape and colour. @param soFar not all is judged yet */
export function OutcomeMark({ outcome, soFar }: { outcome: Outcome; soFar: boolean }) {
  return (
    <p className={styles.outcome} data-outcome={outcome}>
      <span className={styles.badge}>
        <Icon name={outcome} size={20} weight={2.4} />
      </span>
      <span data-testid="verdict-outcome">{WORDS[outcome]}</span>
      {soFar && <span className={styles.soFar}>so far</span>}
    </p>
  );
}
