import { NativeSelect } from '@mantine/core';
import { Icon } from '../app/icons.tsx';
import { propose } from '../state/propose.ts';
import { withoutCase } from '../state/recipe-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import styles from './field.module.css';
import { NumberField } from './NumberField.tsx';
import section from './section.module.css';
import { TextField } from './TextField.tsx';

/** One load case: which sites are touched down, how warm the head is, and how much warmer its device side. */
export function CaseRow({ index, only }: { index: number; only: boolean }) {
  const { history } = useWorkbench();
  const name = useModel((model) => model.cases[index]?.name ?? '');
  const touched = useModel((model) => model.cases[index]?.touched);
  const path = `cases.${index}`;
  const list = Array.isArray(touched) ? [{ value: 'list', label: `${touched.length} by name` }] : [];
  return (
    <>
      <TextField path={`${path}.name`} name={`Name of case ${index + 1}`} />
      <NativeSelect
        className={styles.choice}
        size="xs"
        aria-label={`Sites touched in ${name}`}
        data={[{ value: 'none', label: 'none' }, { value: 'all', label: 'all' }, ...list]}
        value={touched === undefined ? 'none' : touched === 'all' ? 'all' : 'list'}
        onChange={(event) => {
          const next = event.currentTarget.value === 'all' ? 'all' : undefined;
          history.edit((model) => {
            const proposal = propose(model, `${path}.touched`, next);
            return proposal.ok ? proposal.model : model;
          });
        }}
      />
      <NumberField path={`${path}.temperature`} name={`Temperature in ${name}`} step={5} empty="20" />
      <NumberField path={`${path}.gradient`} name={`Gradient in ${name}`} step={1} empty="0" />
      {only ? (
        <span />
      ) : (
        <button
          type="button"
          className={section.remove}
          aria-label={`Remove case ${name}`}
          onClick={() => history.edit((model) => withoutCase(model, index))}
        >
          <Icon name="cross" size={13} />
        </button>
      )}
    </>
  );
}
