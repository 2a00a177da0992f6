import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';

/** Height of the board under a fastener or a seat, whose place in the model the path gives. */
export function BoardHeightRow({ path, name }: { path: string; name: string }) {
  return (
    <Row label="Height of the board here">
      <NumberField
        path={`${path}.height`}
        name={`Height of the board at ${name}`}
        unit="µm"
        scale={1000}
        step={5}
        empty="level"
      />
    </Row>
  );
}
