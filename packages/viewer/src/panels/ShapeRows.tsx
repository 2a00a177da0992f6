import type { Shape } from '@flathead/solver';
import { NativeSelect } from '@mantine/core';
import { asKind, type ShapeKind, shapeKind } from '../state/list-edits.ts';
import { propose } from '../state/propose.ts';
import { valueAt } from '../state/set-value.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { CornersField } from './CornersField.tsx';
import styles from './field.module.css';
import { NumberField } from './NumberField.tsx';
import { Row, Times } from './Row.tsx';

/** Paths of the fields of a shape. */
export function shapeFields(path: string): string[] {
  const pairs = ['rectangle', 'centre'].flatMap((key) => [key, `${key}.0`, `${key}.1`]);
  return ['', ...[...pairs, 'corner', 'circle', 'polygon'].map((key) => `.${key}`)].map((key) => `${path}${key}`);
}

const KINDS: readonly { value: ShapeKind; label: string }[] = [
  { value: 'rectangle', label: 'Rectangle' },
  { value: 'circle', label: 'Circle' },
  { value: 'polygon', label: 'Polygon' },
];

/** A shape of the model: its kind, its sizes and where its middle lies. */
export function ShapeRows({ path, label, name }: { path: string; label: string; name: string }) {
  const { history } = useWorkbench();
  const shape = useModel((model) => shapeAt(valueAt(model, path)));
  if (shape === null) return null;
  const kind = shapeKind(shape);
  return (
    <>
      <Row label={label}>
        <NativeSelect
          className={styles.short}
          size="xs"
          aria-label={`Kind of shape: ${name}`}
          data-testid={`shape-${path}`}
          data={[...KINDS]}
          value={kind}
          onChange={(event) => {
            const next = KINDS.find(({ value }) => value === event.currentTarget.value)?.value ?? kind;
            history.edit((model) => {
              const proposal = propose(model, path, asKind(shape, next));
              return proposal.ok ? proposal.model : model;
            });
          }}
        />
      </Row>
      {kind === 'rectangle' && (
        <>
          <Row label="Size">
            <NumberField path={`${path}.rectangle.0`} name={`${name} width`} unit="mm" forPair />
            <Times />
            <NumberField path={`${path}.rectangle.1`} name={`${name} height`} unit="mm" />
          </Row>
          <Row label="Corner radius">
            <NumberField path={`${path}.corner`} name={`${name} corner radius`} unit="mm" step={0.5} empty="0" />
          </Row>
        </>
      )}
      {kind === 'circle' && (
        <Row label="Diameter">
          <NumberField path={`${path}.circle`} name={`${name} diameter`} unit="mm" />
        </Row>
      )}
      {kind === 'polygon' ? (
        <CornersField path={`${path}.polygon`} name={name} />
      ) : (
        <Row label="Centre x, y">
          <NumberField path={`${path}.centre.0`} name={`${name} centre x`} unit="mm" step={0.5} empty="0" pair />
          <NumberField path={`${path}.centre.1`} name={`${name} centre y`} unit="mm" step={0.5} empty="0" pair />
        </Row>
      )}
    </>
  );
}

function shapeAt(value: unknown): Shape | null {
  return isShape(value) ? value : null;
}

/** What stands in a checked model where a shape belongs is one. */
function isShape(value: unknown): value is Shape {
  return typeof value === 'object' && value !== null && ['rectangle', 'circle', 'polygon'].some((key) => key in value);
}
