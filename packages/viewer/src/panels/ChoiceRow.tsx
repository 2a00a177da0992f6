import { NativeSelect } from '@mantine/core';
import { useId } from 'react';
import styles from './field.module.css';

interface ChoiceRowProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly testId: string;
  choose(value: T): void;
}

/** A line with one of a few words, of what is no part of the model. */
export function ChoiceRow<T extends string>({ label, value, options, testId, choose }: ChoiceRowProps<T>) {
  const id = useId();
  return (
    <div className={styles.row}>
      <label className={styles.label} htmlFor={id}>
        {label}
      </label>
      <NativeSelect
        id={id}
        className={styles.choice}
        size="xs"
        data-testid={testId}
        data={options}
        value={value}
        onChange={(event) => choose(event.currentTarget.value as T)}
      />
    </div>
  );
}
