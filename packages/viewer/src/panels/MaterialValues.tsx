import { asKey } from '../state/set-value.ts';
import { useModel } from '../state/use-workbench.ts';
import { Choice } from './Choice.tsx';
import styles from './field.module.css';
import { HotModulusRows } from './HotModulusRows.tsx';
import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';
import { TextField } from './TextField.tsx';

const KINDS = [
  { value: '', label: 'not given' },
  { value: 'ceramic', label: 'Ceramic: breaks' },
  { value: 'metal', label: 'Metal: yields' },
  { value: 'polymer', label: 'Polymer' },
];
const STRENGTHS = [
  { value: 'mean', label: 'Mean of the bars' },
  { value: 'characteristic', label: '63.2 % of them broken' },
];

/** Everything that is known of an own material. */
export function MaterialValues({ name }: { name: string }) {
  const ceramic = useModel(({ materials }) => materials?.[name]?.kind === 'ceramic');
  const path = `materials.${asKey(name)}`;
  return (
    <>
      <Row label="Young's modulus">
        <NumberField path={`${path}.E`} name={`Young's modulus of ${name}`} unit="GPa" scale={0.001} step={5} />
      </Row>
      <Row label="Poisson's ratio">
        <NumberField path={`${path}.nu`} name={`Poisson's ratio of ${name}`} step={0.01} />
      </Row>
      <Row label="Kind">
        <Choice path={`${path}.kind`} name={`Kind of ${name}`} options={KINDS} standard="" />
      </Row>
      <Row label={ceramic ? 'Flexural strength' : 'Strength'}>
        <NumberField path={`${path}.strength`} name={`Strength of ${name}`} unit="MPa" step={10} empty="not known" />
      </Row>
      {ceramic && (
        <>
          <Row label="which is">
            <Choice
              path={`${path}.strengthIs`}
              name={`What the strength of ${name} is`}
              options={STRENGTHS}
              standard="mean"
            />
          </Row>
          <Row label="Weibull modulus">
            <NumberField path={`${path}.weibull`} name={`Weibull modulus of ${name}`} empty="not known" />
          </Row>
        </>
      )}
      <Row label="Thermal expansion">
        <NumberField
          path={`${path}.expansion`}
          name={`Thermal expansion of ${name}`}
          unit="µm/(m K)"
          scale={1e6}
          step={0.5}
          empty="not known"
        />
      </Row>
      <Row label="Density">
        <NumberField path={`${path}.density`} name={`Density of ${name}`} unit="g/cm³" step={0.1} empty="not known" />
      </Row>
      <HotModulusRows path={path} name={name} />
      <Row label="Source">
        <TextField path={`${path}.source`} name={`Source of the values of ${name}`} className={styles.wide} optional />
      </Row>
    </>
  );
}
