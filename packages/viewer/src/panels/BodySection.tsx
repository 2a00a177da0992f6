import { newOpening, withItem, withoutItem } from '../state/list-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { AddButton, RemoveButton } from './ListButtons.tsx';
import { MaterialRow } from './MaterialRow.tsx';
import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';
import { Section } from './Section.tsx';
import { ShapeRows, shapeFields } from './ShapeRows.tsx';
import styles from './section.module.css';

const OPENINGS = 'body.openings';

export function BodySection() {
  const { history } = useWorkbench();
  const openings = useModel(({ body }) => body.openings?.length ?? 0);
  const claimed = [
    ...['body.thickness', 'body.material'],
    ...shapeFields('body.outline'),
    ...Array.from({ length: openings }, (_, i) => shapeFields(`${OPENINGS}.${i}`)).flat(),
  ];
  return (
    <Section title="Body" of="body" claimed={claimed}>
      <ShapeRows path="body.outline" label="Outline" name="Body" />
      <Row label="Thickness">
        <NumberField path="body.thickness" name="Body thickness" unit="mm" step={0.5} />
      </Row>
      <MaterialRow path="body.material" name="Body material" />
      {Array.from({ length: openings }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an opening is its place in the list
        <div key={i} className={styles.item} data-testid={`opening-${i}`}>
          <div className={styles.itemTitle}>
            Opening {i + 1}
            <RemoveButton
              name={`Remove opening ${i + 1}`}
              onClick={() => history.edit((model) => withoutItem(model, OPENINGS, i))}
            />
          </div>
          <ShapeRows path={`${OPENINGS}.${i}`} label="Shape" name={`Opening ${i + 1}`} />
        </div>
      ))}
      <div className={styles.foot}>
        <AddButton
          label="Add an opening"
          testId="add-opening"
          onClick={() => history.edit((model) => withItem(model, OPENINGS, newOpening(model)))}
        />
      </div>
    </Section>
  );
}
