import styles from './toggle.module.css';

interface ToggleProps {
  /** In sight beside the switch. */
  readonly label?: string;
  /** Name of a switch without a label in sight. */
  readonly name?: string;
  readonly testId: string;
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
}

/** Something that is on or off at once. */
export function Toggle({ label, name, testId, on, onChange }: ToggleProps) {
  return (
    <label className={styles.toggle}>
      {label}
      <input
        type="checkbox"
        role="switch"
        aria-checked={on}
        className={styles.switch}
        aria-label={name}
        data-testid={testId}
        checked={on}
        onChange={(event) => onChange(event.currentTarget.checked)}
      />
    </label>
  );
}
