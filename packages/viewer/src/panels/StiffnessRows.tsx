import { NativeSelect } from '@mantine/core';
import { propose } from '../state/propose.ts';
import { valueAt } from '../state/set-value.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import styles from './field.module.css';
import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';

/** What a given stiffness starts with, N/mm. */
const START = 10_000;

/** Stiffness of a fastener: from its screw, rigid, or so many N/mm. */
export function StiffnessRows({ path, name }: { path: string; name: string }) {
  const { history } = useWorkbench();
  const value = useModel((model) => valueAt(model, path));
  const kind = typeof value === 'number' ? 'given' : value === 'rigid' ? 'rigid' : 'auto';
  return (
    <>
      <Row label="Stiffness">
        <NativeSelect
          className={styles.choice}
          size="xs"
          aria-label={`Stiffness of ${name}`}
          data={[
            { value: 'auto', label: 'from the screw' },
            { value: 'rigid', label: 'rigid' },
            { value: 'given', label: 'given, N/mm' },
          ]}
          value={kind}
          onChange={(event) => {
            const next = { auto: undefined, rigid: 'rigid', given: START }[event.currentTarget.value];
            history.edit((model) => {
              const proposal = propose(model, path, next);
              return proposal.ok ? proposal.model : model;
            });
          }}
        />
      </Row>
      {kind === 'given' && (
        <Row label="">
          <NumberField path={path} name={`Stiffness of ${name}`} unit="N/mm" step={1000} />
        </Row>
      )}
    </>
  );
}
