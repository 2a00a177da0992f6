import { NativeSelect, SegmentedControl } from '@mantine/core';
import { Icon } from '../app/icons.tsx';
import { withoutSeat, withSeatForm, withSeatStiffness } from '../state/recipe-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { BoardHeightRow } from './BoardHeightRow.tsx';
import styles from './field.module.css';
import { NumberField } from './NumberField.tsx';
import { Row, Times } from './Row.tsx';
import section from './section.module.css';
import { TextField } from './TextField.tsx';

/** One seat: name, form and place, and how soft it is. */
export function SeatRows({ index }: { index: number }) {
  const { history } = useWorkbench();
  const seat = useModel((model) => model.seats?.[index]);
  if (seat === undefined) return null;
  const { name } = seat;
  const path = `seats.${index}`;
  const round = 'at' in seat;
  const rectangle = !round && 'rectangle' in seat.shape;
  const place = round ? `${path}.at` : `${path}.shape.centre`;
  const placed = round || ('centre' in seat.shape && seat.shape.centre !== undefined);
  const by = seat.stiffness === undefined ? 'modulus' : 'stiffness';
  return (
    <div className={section.item} data-testid={`seat-${index}`}>
      <div className={section.itemHead}>
        <TextField path={`${path}.name`} name={`Name of seat ${index + 1}`} />
        <SegmentedControl
          size="xs"
          aria-label={`Form of ${name}`}
          data={[
            { value: 'round', label: 'round' },
            { value: 'rectangle', label: 'rectangle' },
          ]}
          value={round ? 'round' : rectangle ? 'rectangle' : ''}
          onChange={(value) =>
            history.edit((model) => withSeatForm(model, index, value === 'round' ? 'round' : 'rectangle'))
          }
        />
        <button
          type="button"
          className={section.remove}
          aria-label={`Remove seat ${name}`}
          onClick={() => history.edit((model) => withoutSeat(model, index))}
        >
          <Icon name="cross" size={13} />
        </button>
      </div>
      {placed && (
        <Row label="Centre x, y">
          <NumberField path={`${place}.0`} name={`${name} x`} unit="mm" step={0.5} forPair />
          <NumberField path={`${place}.1`} name={`${name} y`} unit="mm" step={0.5} />
        </Row>
      )}
      {round && (
        <Row label="Diameter">
          <NumberField path={`${path}.diameter`} name={`Diameter of ${name}`} unit="mm" step={0.5} />
        </Row>
      )}
      {rectangle && (
        <Row label="Size">
          <NumberField path={`${path}.shape.rectangle.0`} name={`${name} along x`} unit="mm" step={0.5} forPair />
          <Times />
          <NumberField path={`${path}.shape.rectangle.1`} name={`${name} along y`} unit="mm" step={0.5} />
        </Row>
      )}
      {!round && !rectangle && <p className={styles.note}>A shape from the file; choose a form to edit it here.</p>}
      <Row label="Stiffness">
        <NativeSelect
          className={styles.short}
          size="xs"
          aria-label={`What the stiffness of ${name} is of`}
          data={[
            { value: 'modulus', label: 'per mm²' },
            { value: 'stiffness', label: 'whole seat' },
          ]}
          value={by}
          onChange={(event) => {
            const next = event.currentTarget.value === 'stiffness' ? 'stiffness' : 'modulus';
            history.edit((model) => withSeatStiffness(model, index, next));
          }}
        />
        <NumberField
          path={`${path}.${by}`}
          name={`Stiffness of ${name}`}
          unit={by === 'modulus' ? 'N/mm³' : 'N/mm'}
          step={100}
        />
      </Row>
      <BoardHeightRow path={path} name={name} />
    </div>
  );
}
