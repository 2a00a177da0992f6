import { NativeSelect } from '@mantine/core';
import fields from '../panels/field.module.css';
import styles from './start.module.css';

interface StartChoiceProps {
  readonly label: string;
  /** For those who do not see what stands above it. */
  readonly name: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** On a line of its own, for long words. */
  readonly wide?: boolean;
  choose(value: string): void;
}

/** One word of the guided start, from a list. */
export function StartChoice({ label, name, value, options, wide = false, choose }: StartChoiceProps) {
  return (
    <div className={fields.row} data-wide={wide || undefined}>
      <span className={fields.label}>{label}</span>
      <NativeSelect
        className={styles.choice}
        size="xs"
        aria-label={name}
        data={options}
        value={value}
        onChange={(event) => choose(event.currentTarget.value)}
      />
    </div>
  );
}
