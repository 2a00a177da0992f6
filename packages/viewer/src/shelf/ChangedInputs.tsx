import type { HeadModel } from '@flathead/solver';
import styles from './compare.module.css';
import { useDifferences } from './use-shelf.ts';

/** So many are told one by one. */
const MOST = 8;

/** What makes one head another, in words. */
export function ChangedInputs({ from, to }: { from: HeadModel; to: HeadModel }) {
  const changes = useDifferences(from, to);
  if (changes.length === 0) return <p className={styles.note}>Nothing but their names.</p>;
  const told = changes.length > MOST ? changes.slice(0, MOST - 1) : changes;
  return (
    <ul className={styles.changes} data-testid="comparison-changes">
      {told.map(({ id, words }) => (
        <li key={id}>{words}</li>
      ))}
      {told.length < changes.length && <li>and {changes.length - told.length} more, under the section</li>}
    </ul>
  );
}
