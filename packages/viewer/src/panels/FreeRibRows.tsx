import { newFreeRib, withItem, withoutItem } from '../state/list-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { AddButton, RemoveButton } from './ListButtons.tsx';
import { NumberField } from './NumberField.tsx';
import { Row, Times } from './Row.tsx';
import styles from './section.module.css';

const RIBS = 'frame.ribs';

/** Paths of the fields of the ribs of a frame, of either kind. */
export function ribFields(count: number): string[] {
  const keys = ['from', 'to'].flatMap((key) => [key, `${key}.0`, `${key}.1`]).concat('width', 'thickness', 'skip', '');
  return Array.from({ length: count }, (_, i) =>
    keys.map((key) => `${RIBS}.${i}${key === '' ? '' : `.${key}`}`),
  ).flat();
}

/** Single ribs, each from a point to a point. */
export function FreeRibRows() {
  const { history } = useWorkbench();
  const places = useModel(({ frame }) => (frame?.ribs ?? []).flatMap((rib, i) => ('from' in rib ? [i] : [])).join());
  const indices = places === '' ? [] : places.split(',').map(Number);
  return (
    <>
      {indices.map((index, k) => {
        const path = `${RIBS}.${index}`;
        const name = `rib ${k + 1}`;
        return (
          <div key={index} className={styles.item} data-testid={`free-rib-${k}`}>
            <div className={styles.itemTitle}>
              Single rib {k + 1}
              <RemoveButton
                name={`Remove ${name}`}
                onClick={() => history.edit((model) => withoutItem(model, RIBS, index))}
              />
            </div>
            <Row label="From x, y">
              <NumberField path={`${path}.from.0`} name={`Start of ${name}, x`} unit="mm" step={0.5} forPair />
              <NumberField path={`${path}.from.1`} name={`Start of ${name}, y`} unit="mm" step={0.5} />
            </Row>
            <Row label="To x, y">
              <NumberField path={`${path}.to.0`} name={`End of ${name}, x`} unit="mm" step={0.5} forPair />
              <NumberField path={`${path}.to.1`} name={`End of ${name}, y`} unit="mm" step={0.5} />
            </Row>
            <Row label="Width × thickness">
              <NumberField path={`${path}.width`} name={`Width of ${name}`} unit="mm" step={0.5} forPair />
              <Times />
              <NumberField
                path={`${path}.thickness`}
                name={`Thickness of ${name}`}
                unit="mm"
                step={0.5}
                empty="frame"
              />
            </Row>
          </div>
        );
      })}
      <div className={styles.foot}>
        <AddButton
          label="Add a single rib"
          testId="add-rib"
          onClick={() => history.edit((model) => withItem(model, RIBS, newFreeRib(model)))}
        />
      </div>
    </>
  );
}
