import { MaterialRow } from './MaterialRow.tsx';
import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';
import { Section } from './Section.tsx';
import { ShapeRows } from './ShapeRows.tsx';

const CLAIMED = ['body.thickness', 'body.material', 'body.outline.rectangle', 'body.outline.corner'];

export function BodySection() {
  return (
    <Section title="Body" of="body" claimed={CLAIMED}>
      <ShapeRows path="body.outline" label="Outline" name="Body" />
      <Row label="Thickness">
        <NumberField path="body.thickness" name="Body thickness" unit="mm" step={0.5} />
      </Row>
      <MaterialRow path="body.material" name="Body material" />
    </Section>
  );
}
