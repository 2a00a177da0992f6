import { coordinateText, signedMicrometres } from '../format/number.ts';
import { usePointer } from '../state/use-workbench.ts';
import styles from './stage.module.css';

/** The field under the pointer. */
export function Readout() {
  const hover = usePointer((pointer) => pointer.hover);
  if (hover === null) return null;
  const { x, y, deviation, site, screen } = hover;
  return (
    <output
      className={styles.readout}
      data-testid="readout"
      style={{ transform: `translate(${screen[0] + 14}px, ${screen[1] + 14}px)` }}
    >
      <strong>{signedMicrometres(deviation)} µm</strong>
      <span>
        {site ? `site ${site}` : 'outside the sites'}, {coordinateText(x)}, {coordinateText(y)} mm
      </span>
    </output>
  );
}
