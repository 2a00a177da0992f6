import { newKeepOut, withItem, withoutItem } from '../state/list-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { AddButton, RemoveButton } from './ListButtons.tsx';
import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';
import { Section } from './Section.tsx';
import { ShapeRows, shapeFields } from './ShapeRows.tsx';
import styles from './section.module.css';
import { TextField } from './TextField.tsx';

/** Areas of the board that screws must keep out of. */
export function KeepOutsSection() {
  const { history } = useWorkbench();
  const count = useModel(({ keepOuts }) => keepOuts?.length ?? 0);
  const names = useModel(({ keepOuts }) => keepOuts?.map(({ name }) => name).join('\n') ?? '').split('\n');
  const paths = Array.from({ length: count }, (_, i) => `keepOuts.${i}`);
  const claimed = paths.flatMap((path) => [`${path}.name`, `${path}.clearance`, ...shapeFields(`${path}.shape`)]);
  return (
    <Section
      title="Keep-outs"
      aside={count === 0 ? 'none: screws may go anywhere' : `${count} on the board; screw heads stay clear`}
      of="keepOuts"
      claimed={claimed}
      rare
    >
      {paths.map((path, i) => (
        <div key={path} className={styles.item} data-testid={`keep-out-${i}`}>
          <div className={styles.itemHead}>
            <TextField path={`${path}.name`} name={`Name of keep-out ${i + 1}`} />
            <RemoveButton
              name={`Remove keep-out ${names[i]}`}
              onClick={() => history.edit((model) => withoutItem(model, 'keepOuts', i))}
            />
          </div>
          <ShapeRows path={`${path}.shape`} label="Shape" name={names[i] ?? ''} />
          <Row label="Clearance">
            <NumberField path={`${path}.clearance`} name={`Clearance of ${names[i]}`} unit="mm" step={0.1} empty="0" />
          </Row>
        </div>
      ))}
      <div className={styles.foot}>
        <AddButton
          label="Add a keep-out"
          testId="add-keep-out"
          onClick={() => history.edit((model) => withItem(model, 'keepOuts', newKeepOut(model)))}
        />
      </div>
    </Section>
  );
}
