import { SegmentedControl } from '@mantine/core';
import { useId } from 'react';
import { withHoles, withPitchInstead, withRelaxing } from '../state/recipe-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { Choice } from './Choice.tsx';
import { COUNTERBORE_FIELDS, CounterboreRows } from './CounterboreRows.tsx';
import { FieldTrouble, useFieldFault } from './FieldTrouble.tsx';
import styles from './field.module.css';
import { NumberField } from './NumberField.tsx';
import { Row, Times } from './Row.tsx';
import { Section } from './Section.tsx';
import { Toggle } from './Toggle.tsx';

const PROBES = 'sites.probes';
const CLAIMED = [
  ...['sites.columns', 'sites.rows', 'sites.die', 'sites.skip', 'sites.pitch', `${PROBES}.count`],
  ...['preload', 'touchdown', 'rate', 'kind', 'relax'].map((key) => `${PROBES}.${key}`),
  ...['pitch', 'diameter', 'pattern', 'angle'].map((key) => `${PROBES}.holes.${key}`),
  ...COUNTERBORE_FIELDS,
  ...['sites.die', 'sites.skip', 'sites.pitch', 'sites.origin', `${PROBES}.field`].flatMap((path) => [
    path,
    `${path}.0`,
    `${path}.1`,
  ]),
];
const HOLES = `${PROBES}.holes`;
const PATTERNS = [
  { value: 'square', label: 'Square: rows and columns' },
  { value: 'triangular', label: 'Triangular: rows offset by half' },
];
const KINDS = [
  { value: 'floating', label: 'Floating: relieve when touched' },
  { value: 'shouldered', label: 'Shouldered: load when touched' },
];

/** The site pattern and what its probes push with. */
export function SitesSection() {
  const { history } = useWorkbench();
  const sites = useModel((model) => model.sites);
  const byPitch = sites.pitch !== undefined;
  const drilled = sites.probes.holes !== undefined;
  const count = sites.columns * sites.rows;
  const force = sites.probes.count * sites.probes.preload;
  const relaxing = sites.probes.relax === true;
  const relaxFault = useFieldFault(`${PROBES}.relax`);
  const relaxTrouble = useId();
  const aside = `${count} ${count === 1 ? 'site' : 'sites'}, ${force.toFixed(force < 10 ? 1 : 0)} N each`;
  return (
    <Section title="Sites" aside={aside} of="sites" claimed={CLAIMED}>
      <Row label="Columns × rows">
        <NumberField path="sites.columns" name="Site columns" />
        <Times />
        <NumberField path="sites.rows" name="Site rows" />
      </Row>
      <Row label="Spaced by">
        <SegmentedControl
          size="xs"
          aria-label="Sites spaced by"
          data={[
            { value: 'skip', label: 'skipped dies' },
            { value: 'pitch', label: 'pitch' },
          ]}
          value={byPitch ? 'pitch' : 'skip'}
          onChange={(value) => history.edit((model) => withPitchInstead(model, value === 'pitch'))}
        />
      </Row>
      {byPitch ? (
        <Row label="Pitch">
          <NumberField path="sites.pitch.0" name="Site pitch along x" unit="mm" step={0.5} forPair />
          <Times />
          <NumberField path="sites.pitch.1" name="Site pitch along y" unit="mm" step={0.5} />
        </Row>
      ) : (
        <>
          <Row label="Die">
            <NumberField path="sites.die.0" name="Die along x" unit="mm" step={0.1} forPair />
            <Times />
            <NumberField path="sites.die.1" name="Die along y" unit="mm" step={0.1} />
          </Row>
          <Row label="Dies skipped">
            <NumberField path="sites.skip.0" name="Dies skipped along x" forPair />
            <Times />
            <NumberField path="sites.skip.1" name="Dies skipped along y" />
          </Row>
        </>
      )}
      <Row label="Centre x, y">
        <NumberField path="sites.origin.0" name="Centre of the sites, x" unit="mm" step={0.5} empty="0" pair />
        <NumberField path="sites.origin.1" name="Centre of the sites, y" unit="mm" step={0.5} empty="0" pair />
      </Row>
      <Row label="Probe field">
        <NumberField path={`${PROBES}.field.0`} name="Probe field along x" unit="mm" step={0.1} forPair />
        <Times />
        <NumberField path={`${PROBES}.field.1`} name="Probe field along y" unit="mm" step={0.1} />
      </Row>
      <Row label="Probes per site">
        <NumberField path={`${PROBES}.count`} name="Probes per site" step={10} />
      </Row>
      <Row label="Drilled as an array">
        <Toggle
          name="Probe fields drilled as an array of holes"
          testId="holes-switch"
          on={drilled}
          onChange={(on) => history.edit((model) => withHoles(model, on))}
        />
      </Row>
      {drilled && (
        <>
          <Row label="Hole pitch">
            <NumberField path={`${HOLES}.pitch`} name="Pitch of the holes" unit="mm" step={0.01} />
          </Row>
          <Row label="Hole diameter">
            <NumberField path={`${HOLES}.diameter`} name="Diameter of the holes" unit="mm" step={0.01} />
          </Row>
          <Row label="Pattern">
            <Choice path={`${HOLES}.pattern`} name="Pattern of the holes" options={PATTERNS} />
          </Row>
          <Row label="Rotation of rows">
            <NumberField path={`${HOLES}.angle`} name="Angle of the rows of holes" unit="°" step={5} empty="0" />
          </Row>
          <CounterboreRows />
        </>
      )}
      <Row label="Preload of a probe">
        <NumberField path={`${PROBES}.preload`} name="Preload of a probe" unit="N" step={0.01} />
      </Row>
      <Row label="Force at touchdown">
        <NumberField
          path={`${PROBES}.touchdown`}
          name="Force of a probe at touchdown"
          unit="N"
          step={0.01}
          empty="not given"
        />
      </Row>
      <Row label="Probes">
        <Choice path={`${PROBES}.kind`} name="Kind of probe" options={KINDS} standard="floating" />
      </Row>
      <Row label="Spring rate of a probe">
        <NumberField path={`${PROBES}.rate`} name="Spring rate of a probe" unit="N/mm" step={0.05} empty="not given" />
      </Row>
      {(sites.probes.rate !== undefined || relaxing) && (
        <>
          <Row label="Relax as the head bows">
            <Toggle
              name="Probes relax as the head bows"
              testId="relax-switch"
              on={relaxing}
              onChange={(on) => history.edit((model) => withRelaxing(model, on))}
            />
            <FieldTrouble id={relaxTrouble} message={relaxFault} />
          </Row>
          <p className={styles.note}>
            {relaxing
              ? 'On: the load of each probe falls by its rate times the deflection of the head.'
              : 'Off: the load keeps the whole preload, the worst for the bow. The contact force left is worked out from that bow afterwards.'}
          </p>
        </>
      )}
    </Section>
  );
}
