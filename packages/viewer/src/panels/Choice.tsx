import { NativeSelect } from '@mantine/core';
import { memo, useId } from 'react';
import { propose } from '../state/propose.ts';
import { valueAt } from '../state/set-value.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { FieldTrouble, useFieldFault } from './FieldTrouble.tsx';
import styles from './field.module.css';

interface ChoiceProps {
  readonly path: string;
  readonly name: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** The option that stands where the model leaves the word out, and that leaves it out when chosen. */
  readonly standard?: string;
}

/** One of a few words of the model. A word that is not among the options is shown as it is. */
export const Choice = memo(function Choice({ path, name, options, standard }: ChoiceProps) {
  const { history } = useWorkbench();
  const value = useModel((model) => valueAt(model, path));
  const fault = useFieldFault(path);
  const troubleId = useId();
  const text = typeof value === 'string' ? value : (standard ?? '');
  const known = options.some((option) => option.value === text);
  return (
    <>
      <NativeSelect
        className={styles.choice}
        size="xs"
        aria-label={name}
        aria-invalid={fault !== null}
        aria-describedby={fault === null ? undefined : troubleId}
        data-testid={`field-${path}`}
        data={known ? options : [{ value: text, label: text === '' ? 'none' : text }, ...options]}
        value={text}
        onChange={(event) => {
          const chosen = event.currentTarget.value;
          const next = chosen === standard ? undefined : chosen;
          history.edit((model) => {
            const proposal = propose(model, path, next);
            return proposal.ok ? proposal.model : model;
          });
        }}
      />
      <FieldTrouble id={troubleId} message={fault} />
    </>
  );
});
