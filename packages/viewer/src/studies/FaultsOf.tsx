import type { Judged } from '@flathead/solver';
import { typeset } from '../format/number.ts';
import styles from './studies.module.css';

const MOST = 4;

/** Why rows have no figures, each reason once. */
export function FaultsOf({ rows }: { rows: readonly Judged[] }) {
  const counts = new Map<string, number>();
  for (const { fault } of rows)
    if (fault !== undefined) counts.set(fault.message, (counts.get(fault.message) ?? 0) + 1);
  if (counts.size === 0) return null;
  return (
    <ul className={styles.remarks}>
      {[...counts].slice(0, MOST).map(([message, count]) => (
        <li key={message}>
          {count} without an answer: {typeset(message)}
        </li>
      ))}
    </ul>
  );
}
