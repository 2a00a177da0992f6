import { type ReactNode, useId } from 'react';
import { typeset } from '../format/number.ts';
import { useRefusal } from '../state/use-workbench.ts';
import styles from './section.module.css';

interface SectionProps {
  readonly title: string;
  /** What follows from the fields, beside the title. */
  readonly aside?: ReactNode;
  /** Head of the paths in the model that the section edits, such as `body`. */
  readonly of: string;
  /** Paths whose faults a field of the section shows itself. */
  readonly claimed: readonly string[];
  readonly children: ReactNode;
}

/** A part of the recipe. Shows the solver's refusal where it is about the part but no single field. */
export function Section({ title, aside, of, claimed, children }: SectionProps) {
  const id = useId();
  const fault = useRefusal();
  const mine = fault !== null && (fault.path === of || fault.path.startsWith(`${of}.`));
  const said = mine && !claimed.includes(fault.path) ? fault.message : null;
  return (
    <section className={styles.section} aria-labelledby={id}>
      <header className={styles.head}>
        <h2 id={id} className={styles.title}>
          {title}
        </h2>
        {aside !== undefined && <span className={styles.aside}>{aside}</span>}
      </header>
      {said !== null && (
        <p className={styles.trouble} role="alert">
          {typeset(said)}
        </p>
      )}
      {children}
    </section>
  );
}
