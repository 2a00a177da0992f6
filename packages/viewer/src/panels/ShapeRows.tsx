import { valueAt } from '../state/set-value.ts';
import { useModel } from '../state/use-workbench.ts';
import styles from './field.module.css';
import { NumberField } from './NumberField.tsx';
import { Row, Times } from './Row.tsx';

/** Sizes of a rectangle or circle. A polygon is shown, not edited. */
export function ShapeRows({ path, label, name }: { path: string; label: string; name: string }) {
  const shape = useModel((model) => valueAt(model, path));
  if (typeof shape !== 'object' || shape === null) return null;
  if ('polygon' in shape && Array.isArray(shape.polygon))
    return (
      <Row label={label}>
        <span className={styles.unit}>polygon of {shape.polygon.length} corners</span>
      </Row>
    );
  if ('circle' in shape)
    return (
      <Row label={`${label} diameter`}>
        <NumberField path={`${path}.circle`} name={`${name} diameter`} unit="mm" />
      </Row>
    );
  return (
    <>
      <Row label={label}>
        <NumberField path={`${path}.rectangle.0`} name={`${name} width`} unit="mm" forPair />
        <Times />
        <NumberField path={`${path}.rectangle.1`} name={`${name} height`} unit="mm" />
      </Row>
      <Row label="Corner radius">
        <NumberField path={`${path}.corner`} name={`${name} corner radius`} unit="mm" step={0.5} empty="0" />
      </Row>
    </>
  );
}
