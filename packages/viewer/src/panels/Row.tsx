import type { ReactNode } from 'react';
import styles from './field.module.css';

/** A line of the recipe: what it is on the left, its fields on the right, what is wrong with them below. */
export function Row({ label, children }: { label: string; children: ReactNode }) {
  return (
    <div className={styles.row} data-row>
      <span className={styles.label}>{label}</span>
      {children}
    </div>
  );
}

/** Between the fields of a pair. */
export function Times() {
  return (
    <span className={styles.times} aria-hidden="true">
      ×
    </span>
  );
}
