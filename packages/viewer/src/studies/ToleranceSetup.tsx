import { fieldText } from '../format/number.ts';
import { useModel } from '../state/use-workbench.ts';
import { youngOf } from './parameters.ts';
import { ChoiceSetup, type Fields, NumberSetup } from './SetupFields.tsx';
import styles from './studies.module.css';

/** How far the parts of a head may be off, and how many heads are looked at. */
export function ToleranceSetup({ fields }: { fields: Fields }) {
  const model = useModel((model) => model);
  const { body, sites } = model;
  return (
    <>
      <NumberSetup
        {...{ fields }}
        field="thickness"
        label={`Thickness, ${fieldText(body.thickness)} mm ±`}
        unit="mm"
        empty="exact"
      />
      {youngOf(model) !== null && (
        <NumberSetup {...{ fields }} field="young" label="E of the body ±" unit="%" empty="exact" />
      )}
      <NumberSetup
        {...{ fields }}
        field="preload"
        label={`Preload, ${fieldText(sites.probes.preload)} N ±`}
        unit="%"
        empty="exact"
      />
      <NumberSetup {...{ fields }} field="place" label="Place of each fastener ±" unit="mm" empty="exact" />
      <NumberSetup {...{ fields }} field="samples" label="Heads" />
      <NumberSetup {...{ fields }} field="seed" label="Seed" />
      <ChoiceSetup
        {...{ fields }}
        field="indices"
        label="Sensitivity"
        options={[
          { value: 'yes', label: 'yes' },
          { value: 'no', label: 'no' },
        ]}
      />
      <p className={styles.note}>
        A tolerance is three standard deviations of a normal distribution. To find out what matters takes as many
        further heads for each cause; best is a power of two.
      </p>
    </>
  );
}
