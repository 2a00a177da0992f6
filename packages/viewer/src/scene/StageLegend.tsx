import { Legend } from '../charts/Legend.tsx';
import { useQuantity } from '../state/use-quantity.ts';
import { useView, useWorkbench } from '../state/use-workbench.ts';
import styles from './stage.module.css';

/** What the colours of the stage mean. */
export function StageLegend() {
  const { view } = useWorkbench();
  const signed = useView((state) => state.signed);
  const { quantity, tension, scale, contact } = useQuantity();
  if (quantity === 'deviation')
    return (
      <>
        <Legend
          scale={scale}
          signed={signed}
          caption={signed ? 'To the board (−), away (+), µm' : 'Bow, µm'}
          unit="µm"
          factor={1000}
        />
        <label className={styles.choice}>
          <input
            type="checkbox"
            data-testid="signed"
            checked={signed}
            onChange={(event) => view.setState({ signed: event.currentTarget.checked })}
          />
          Show direction
        </label>
      </>
    );
  if (quantity === 'contact') {
    if (contact === null)
      return <p className={styles.legendNote}>Contact needs the spring rate of a probe: see Sites in the recipe.</p>;
    const all = contact.allowed === null;
    return (
      <>
        <Legend scale={scale} caption="Force left to a probe, N" unit="N" factor={1} leftOf={contact.preload} />
        {all && <p className={styles.legendNote}>Dark: no force is left. The head has no limit for this.</p>}
      </>
    );
  }
  const caption =
    tension === null ? 'Tension follows' : tension.stale ? 'Tension before the edit, MPa' : 'Tension on the body, MPa';
  return <Legend scale={scale} caption={caption} unit="MPa" factor={1} />;
}
