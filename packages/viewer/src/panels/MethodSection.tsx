import { withElementSize } from '../state/recipe-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { Choice } from './Choice.tsx';
import styles from './field.module.css';
import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';
import { Section } from './Section.tsx';
import { TextField } from './TextField.tsx';
import { Toggle } from './Toggle.tsx';

const THEORIES = [
  { value: 'shear', label: 'With transverse shear' },
  { value: 'thin', label: 'Thin plate' },
];

/** Notes on the head, and how it is solved. */
export function MethodSection() {
  const { history } = useWorkbench();
  const sized = useModel(({ mesh }) => mesh !== undefined && 'size' in mesh);
  return (
    <>
      <Section title="Method" aside="best left alone" of="mesh" claimed={['mesh.size', 'theory']} rare>
        <Row label="Plate theory">
          <Choice path="theory" name="Plate theory" options={THEORIES} standard="shear" />
        </Row>
        <Row label="Element size by hand">
          <Toggle
            name="Element size given by hand"
            testId="size-switch"
            on={sized}
            onChange={(on) => history.edit((model) => withElementSize(model, on))}
          />
        </Row>
        {sized && (
          <Row label="Element size">
            <NumberField path="mesh.size" name="Element size" unit="mm" step={0.1} />
          </Row>
        )}
      </Section>
      <Section title="Note" of="note" claimed={['note']} rare>
        <TextField path="note" name="Note on the head" className={styles.wide} optional lines={4} />
      </Section>
    </>
  );
}
