import { useId } from 'react';
import styles from '../panels/field.module.css';
import { typedLength } from './readings.ts';

interface LengthRowProps {
  readonly label: string;
  readonly testId: string;
  /** As typed. */
  readonly value: string;
  /** What stands where nothing is typed. */
  readonly empty: string;
  choose(value: string): void;
}

/** A length that a file is read with; read as it is typed. */
export function LengthRow({ label, testId, value, empty, choose }: LengthRowProps) {
  const id = useId();
  const isBad = typedLength(value) === null;
  return (
    <div className={styles.row}>
      <label className={styles.label} htmlFor={id}>
        {label}
      </label>
      <span className={styles.box} data-trouble={isBad || undefined}>
        <input
          id={id}
          className={styles.number}
          inputMode="decimal"
          autoComplete="off"
          data-testid={testId}
          aria-invalid={isBad}
          title={isBad ? `"${value}" is no length of 0 or more.` : undefined}
          placeholder={empty}
          value={value}
          onChange={(event) => choose(event.currentTarget.value)}
        />
        {value !== '' && (
          <span className={styles.unit} aria-hidden="true">
            mm
          </span>
        )}
      </span>
    </div>
  );
}
