import { Icon } from '../app/icons.tsx';
import { withNewSeat } from '../state/recipe-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { SeatRows } from './SeatRows.tsx';
import { Section } from './Section.tsx';
import styles from './section.module.css';

const KEYS = ['name', 'at.0', 'at.1', 'at', 'diameter', 'modulus', 'stiffness', 'shape.rectangle', 'shape.circle'];

/** Pads and lands of the board that the head rests on. */
export function SeatsSection() {
  const { history } = useWorkbench();
  const count = useModel(({ seats }) => seats?.length ?? 0);
  const claimed = Array.from({ length: count }, (_, i) => KEYS.map((key) => `seats.${i}.${key}`)).flat();
  return (
    <Section
      title="Seats"
      aside={count === 0 ? 'none: held by the fasteners alone' : 'pads of the board; they only push'}
      of="seats"
      claimed={claimed}
    >
      {Array.from({ length: count }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a seat is its place in the list; names may repeat while typed
        <SeatRows key={i} index={i} />
      ))}
      <div className={styles.foot}>
        <button type="button" className={styles.add} data-testid="add-seat" onClick={() => history.edit(withNewSeat)}>
          <Icon name="plus" size={14} /> Add a seat
        </button>
      </div>
    </Section>
  );
}
