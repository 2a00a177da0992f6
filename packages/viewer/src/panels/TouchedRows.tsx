import { useId } from 'react';
import { touchKind } from '../state/touched-sites.ts';
import { useModel } from '../state/use-workbench.ts';
import { Choice } from './Choice.tsx';
import { FieldTrouble, useFieldFault } from './FieldTrouble.tsx';
import styles from './field.module.css';
import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';
import { SiteListField } from './SiteListField.tsx';

const CENTRES = [
  { value: 'die', label: 'Middle of a die' },
  { value: 'corner', label: 'Corner of dies' },
];

/** Which sites a case touches, where it takes more than a word: a list of names, or a wafer. */
export function TouchedRows({ index, name }: { index: number; name: string }) {
  const kind = useModel((model) => touchKind(model.cases[index]?.touched));
  const path = `cases.${index}.touched`;
  const wafer = `${path}.wafer`;
  const fault = useFieldFault(wafer);
  const troubleId = useId();
  if (kind === 'list')
    return (
      <div className={styles.detail}>
        <Row label="Sites touched">
          <SiteListField path={path} name={`Names of the sites touched in ${name}`} />
        </Row>
      </div>
    );
  if (kind !== 'wafer') return null;
  return (
    <div className={styles.detail}>
      <FieldTrouble id={troubleId} message={fault} />
      <Row label="Wafer diameter">
        <NumberField path={`${wafer}.diameter`} name={`Diameter of the wafer in ${name}`} unit="mm" step={50} />
      </Row>
      <Row label="Edge exclusion">
        <NumberField path={`${wafer}.edge`} name={`Edge exclusion in ${name}`} unit="mm" step={0.5} />
      </Row>
      <Row label="Centre of the wafer">
        <Choice path={`${wafer}.centre`} name={`Centre of the wafer in ${name}`} options={CENTRES} standard="die" />
      </Row>
      <p className={styles.note}>Every set of sites that a step over the wafer touches becomes a case.</p>
    </div>
  );
}
