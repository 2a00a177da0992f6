import { withTolerance } from '../state/recipe-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import styles from './field.module.css';
import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';
import { Section } from './Section.tsx';
import { Toggle } from './Toggle.tsx';

const OFF = 'not judged';
const CLAIMED = ['bow', 'flatness', 'contactForce', 'strengthFactor', 'failureProbability', 'fastener', 'margin']
  .map((key) => `limits.${key}`)
  .concat('mesh.tolerance');

/** What the verdict compares with. */
export function LimitsSection() {
  const { history } = useWorkbench();
  const refined = useModel(({ mesh }) => mesh !== undefined && 'tolerance' in mesh);
  return (
    <Section title="Limits" aside="an empty one is not judged" of="limits" claimed={CLAIMED}>
      <Row label="Bow of the site area, at most">
        <NumberField path="limits.bow" name="Limit of bow" unit="µm" scale={1000} />
      </Row>
      <Row label="Flatness of the area, at most">
        <NumberField path="limits.flatness" name="Limit of flatness" unit="µm" scale={1000} empty={OFF} />
      </Row>
      <Row label="Contact force, at least">
        <NumberField path="limits.contactForce" name="Least contact force" unit="N" step={0.01} empty={OFF} />
      </Row>
      <Row label="Strength ÷ stress, at least">
        <NumberField path="limits.strengthFactor" name="Least strength factor" step={0.5} empty={OFF} />
      </Row>
      <Row label="Failure of ceramic, at most">
        <NumberField path="limits.failureProbability" name="Limit of failure probability" byPowers empty={OFF} />
      </Row>
      <Row label="Use of a screw, at most">
        <NumberField path="limits.fastener" name="Limit of fastener use" unit="%" scale={100} step={5} empty={OFF} />
      </Row>
      <p className={styles.note}>
        Of its proof load, its tapped thread and its clamp force; the screw needs a preload.
      </p>
      <Row label="Margin to keep in hand">
        <NumberField path="limits.margin" name="Margin to keep in hand" unit="%" scale={100} empty="0" />
      </Row>
      <Row label="Refine to an error">
        <Toggle
          name="Mesh refined until the numerical error is small enough"
          testId="tolerance-switch"
          on={refined}
          onChange={(on) => history.edit((model) => withTolerance(model, on))}
        />
      </Row>
      {refined && (
        <Row label="Of the limits, at most">
          <NumberField path="mesh.tolerance" name="Numerical error over the limits" unit="%" scale={100} step={0.5} />
        </Row>
      )}
    </Section>
  );
}
