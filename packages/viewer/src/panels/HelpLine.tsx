import { type ReactNode, type SyntheticEvent, useState } from 'react';
import styles from './help-line.module.css';

interface HelpLineProps {
  readonly label: string;
  readonly className?: string | undefined;
  /** Said while no field is pointed at. */
  readonly idle?: string;
  readonly children: ReactNode;
}

const IDLE = 'Point at a field to see what it means. You may type 7.5, 7,5 or 0.3 inch.';

/**
 * Fields with a line under them that tells meaning, range and unit of the one that is pointed at, or else has the focus.
 * Those who do not see it have the same as the description of the field.
 */
export function HelpLine({ label, className, idle = IDLE, children }: HelpLineProps) {
  const [focused, setFocused] = useState('');
  const [pointed, setPointed] = useState('');
  return (
    <aside className={styles.whole} aria-label={label}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: it only watches what happens inside */}
      <div
        className={className}
        onFocus={(event) => setFocused(helpOf(event))}
        onBlur={() => setFocused('')}
        onMouseOver={(event) => setPointed(helpOf(event))}
        onMouseLeave={() => setPointed('')}
      >
        {children}
      </div>
      <p className={styles.line} aria-hidden="true" data-testid="help-line">
        {pointed || focused || idle}
      </p>
    </aside>
  );
}

/** Help of the field that an event came from, or of the first in its row. */
function helpOf({ target }: SyntheticEvent): string {
  if (!(target instanceof HTMLElement)) return '';
  const field =
    target.closest<HTMLElement>('[data-help]') ?? target.closest('[data-row]')?.querySelector('[data-help]');
  return field instanceof HTMLElement ? (field.dataset.help ?? '') : '';
}
