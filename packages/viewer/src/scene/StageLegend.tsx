import { Legend } from '../charts/Legend.tsx';
import { useQuantity } from '../state/use-quantity.ts';
import { useModel, useView, useWorkbench } from '../state/use-workbench.ts';
import styles from './stage.module.css';

/** What the colours of the stage mean. */
export function StageLegend() {
  const { view } = useWorkbench();
  const bow = useModel((model) => model.limits.bow);
  const signed = useView((state) => state.signed);
  const { quantity, tension, scale, contact } = useQuantity();
  if (quantity === 'deviation')
    return (
      <>
        <Legend
          top={bow}
          limited
          signed={signed}
          caption={signed ? 'Towards the board and away from it, µm' : 'Bow against the limit, µm'}
          unit="µm"
          scale={1000}
        />
        <label className={styles.choice}>
          <input
            type="checkbox"
            data-testid="signed"
            checked={signed}
            onChange={(event) => view.setState({ signed: event.currentTarget.checked })}
          />
          Tell the two senses apart
        </label>
      </>
    );
  if (quantity === 'contact')
    return contact === null ? (
      <p className={styles.legendNote}>Contact needs the spring rate of a probe: see Sites in the recipe.</p>
    ) : (
      <Legend top={contact.top} limited caption="Force lost by a probe, N" unit="N" scale={1} />
    );
  const { top, limited } = scale;
  const what = tension?.stale ? 'Tension before the edit, MPa' : 'Tension on the body, MPa';
  const caption = tension === null ? 'Tension follows shortly' : what;
  return <Legend top={top} limited={limited} caption={caption} unit="MPa" scale={1} />;
}
