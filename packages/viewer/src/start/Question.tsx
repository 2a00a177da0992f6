import { type ReactNode, useId } from 'react';
import styles from './start.module.css';

/** One question of the guided start, with what answers it. */
export function Question({ title, children }: { title: string; children: ReactNode }) {
  const id = useId();
  return (
    <section className={styles.question} aria-labelledby={id}>
      <h3 id={id}>{title}</h3>
      {children}
    </section>
  );
}
