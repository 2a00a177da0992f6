import { useId } from 'react';
import { ChoiceRow } from '../panels/ChoiceRow.tsx';
import styles from '../panels/field.module.css';

/** Fields of a study: what stands in them, what is wrong, and where a change goes. */
export interface Fields {
  readonly text: (field: string) => string;
  readonly trouble: (field: string) => string | null;
  readonly type: (field: string, text: string) => void;
}

interface FieldProps {
  readonly fields: Fields;
  readonly field: string;
  readonly label: string;
}

/** A number of a study, as it is typed; it is read when the study is run. */
export function NumberSetup({
  fields,
  field,
  label,
  unit = '',
  empty,
}: FieldProps & { readonly unit?: string; readonly empty?: string }) {
  const id = useId();
  const trouble = fields.trouble(field);
  return (
    <div className={styles.row}>
      <label className={styles.label} htmlFor={id}>
        {label}
      </label>
      <BareNumber {...{ fields, field, label, unit, empty, id }} />
      {trouble !== null && (
        <p id={`${id}trouble`} className={styles.trouble} role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}

/** The box of a number alone, for lines that hold several. */
export function BareNumber({
  fields,
  field,
  label,
  unit = '',
  empty,
  id,
}: FieldProps & { readonly unit?: string; readonly empty?: string | undefined; readonly id?: string }) {
  const trouble = fields.trouble(field);
  const text = fields.text(field);
  return (
    <span className={styles.box} data-trouble={trouble === null ? undefined : true}>
      <input
        id={id}
        className={styles.number}
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        data-testid={`setup-${field}`}
        aria-label={unit === '' ? label : `${label}, ${unit}`}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null || id === undefined ? undefined : `${id}trouble`}
        title={trouble ?? undefined}
        placeholder={empty}
        value={text}
        onChange={(event) => fields.type(field, event.currentTarget.value)}
        onFocus={(event) => event.currentTarget.select()}
      />
      {unit !== '' && text !== '' && (
        <span className={styles.unit} aria-hidden="true">
          {unit}
        </span>
      )}
    </span>
  );
}

/** A choice of a study. */
export function ChoiceSetup({
  fields,
  field,
  label,
  options,
  onChosen,
}: FieldProps & {
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** Told of the choice beside the field. */
  readonly onChosen?: (value: string) => void;
}) {
  return (
    <ChoiceRow
      {...{ label, options }}
      testId={`setup-${field}`}
      value={fields.text(field)}
      choose={(value) => {
        fields.type(field, value);
        onChosen?.(value);
      }}
    />
  );
}
