import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';
import { Section } from './Section.tsx';

/** What the verdict compares with. */
export function LimitsSection() {
  return (
    <Section title="Limits" of="limits" claimed={['limits.bow', 'limits.flatness', 'limits.margin']}>
      <Row label="Bow of the site area">
        <NumberField path="limits.bow" name="Limit of bow" unit="µm" scale={1000} />
      </Row>
      <Row label="Flatness of the site area">
        <NumberField path="limits.flatness" name="Limit of flatness" unit="µm" scale={1000} empty="none" />
      </Row>
      <Row label="Margin to keep in hand">
        <NumberField path="limits.margin" name="Margin to keep in hand" unit="%" scale={100} empty="0" />
      </Row>
    </Section>
  );
}
