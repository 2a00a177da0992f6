import { type ReactNode, useId } from 'react';
import { Icon } from '../app/icons.tsx';
import { typeset } from '../format/number.ts';
import { useFolded } from '../state/use-folded.ts';
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
  /** Shut until it is opened: a part that few heads need. */
  readonly rare?: boolean;
  readonly children: ReactNode;
}

/** A part of the recipe that can be folded up. Shows the solver's refusal where it is about the part but no single field. */
export function Section({ title, aside, of, claimed, rare = false, children }: SectionProps) {
  const id = useId();
  const [folded, fold] = useFolded(title, rare);
  const fault = useRefusal();
  const mine = fault !== null && (fault.path === of || fault.path.startsWith(`${of}.`));
  const said = mine && (folded || !claimed.includes(fault.path)) ? fault.message : null;
  return (
    <section className={styles.section} aria-labelledby={id}>
      <header className={styles.head}>
        <h2 className={styles.title}>
          <button
            type="button"
            className={styles.fold}
            aria-expanded={!folded}
            data-testid={`fold-${title}`}
            onClick={() => fold(!folded)}
          >
            <Icon name="down" size={13} weight={2} />
            <span id={id}>{title}</span>
          </button>
        </h2>
        {aside !== undefined && <span className={styles.aside}>{aside}</span>}
      </header>
      {said !== null && (
        <p className={styles.trouble} role="alert">
          {typeset(said)}
        </p>
      )}
      {!folded && children}
    </section>
  );
}
