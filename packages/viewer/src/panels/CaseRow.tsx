import { siteLayout } from '@flathead/solver';
import { NativeSelect } from '@mantine/core';
import { Icon } from '../app/icons.tsx';
import { propose } from '../state/propose.ts';
import { withoutCase } from '../state/recipe-edits.ts';
import { type TouchKind, touchedBy, touchKind } from '../state/touched-sites.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import styles from './field.module.css';
import { NumberField } from './NumberField.tsx';
import section from './section.module.css';
import { TextField } from './TextField.tsx';
import { TouchedRows } from './TouchedRows.tsx';

const KINDS: { value: TouchKind; label: string }[] = [
  { value: 'none', label: 'none' },
  { value: 'all', label: 'all' },
  { value: 'list', label: 'named' },
  { value: 'wafer', label: 'a wafer' },
];

/** One load case: which sites are touched down, how warm the head is, and how much warmer its device side. */
export function CaseRow({ index, only }: { index: number; only: boolean }) {
  const { history } = useWorkbench();
  const name = useModel((model) => model.cases[index]?.name ?? '');
  const touched = useModel((model) => model.cases[index]?.touched);
  const path = `cases.${index}`;
  return (
    <>
      <TextField path={`${path}.name`} name={`Name of case ${index + 1}`} />
      <NativeSelect
        className={styles.choice}
        size="xs"
        aria-label={`Sites touched in ${name}`}
        data-testid={`touched-${index}`}
        data={KINDS}
        value={touchKind(touched)}
        onChange={(event) => {
          const kind = KINDS.find(({ value }) => value === event.currentTarget.value)?.value ?? 'none';
          history.edit((model) => {
            const sites = siteLayout(model.sites).map((site) => site.name);
            const proposal = propose(model, `${path}.touched`, touchedBy(kind, sites));
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
      <TouchedRows index={index} name={name} />
    </>
  );
}
