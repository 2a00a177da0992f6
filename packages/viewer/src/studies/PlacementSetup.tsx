import { useModel } from '../state/use-workbench.ts';
import { ChoiceSetup, type Fields, NumberSetup } from './SetupFields.tsx';
import styles from './studies.module.css';

/** Where fasteners may go, and what for. */
export function PlacementSetup({ fields }: { fields: Fields }) {
  const fasteners = useModel(({ fasteners }) => fasteners);
  const keepOuts = useModel((model) => model.keepOuts?.length ?? 0);
  const fixed = fields.text('fixed').split('\n');
  return (
    <>
      <NumberSetup {...{ fields }} field="count" label="Fasteners in all" />
      <ChoiceSetup
        {...{ fields }}
        field="mirror"
        label="Mirrored"
        options={[
          { value: 'both', label: 'both ways' },
          { value: 'x', label: 'left-right' },
          { value: 'y', label: 'across' },
          { value: 'none', label: 'not' },
        ]}
      />
      <NumberSetup {...{ fields }} field="clearance" label="Clear of probe fields" unit="mm" />
      <NumberSetup {...{ fields }} field="spacing" label="Screw to screw" unit="mm" empty="touching" />
      <NumberSetup {...{ fields }} field="step" label="Grid" unit="mm" empty="any place" />
      <ChoiceSetup
        {...{ fields }}
        field="objective"
        label="Make small"
        options={[
          { value: 'bow', label: 'the bow' },
          { value: 'flatness', label: 'the flatness' },
          { value: 'share', label: 'both, by limit' },
        ]}
      />
      <ChoiceSetup
        {...{ fields }}
        field="curve"
        label="Also compare"
        options={[
          { value: 'none', label: 'nothing else' },
          { value: 'count', label: 'more, fewer fasteners' },
          { value: 'clearance', label: 'clearances' },
        ]}
      />
      <fieldset className={styles.fixed}>
        <legend>Stay where they are</legend>
        {fasteners.map(({ name }) => (
          <label key={name}>
            <input
              type="checkbox"
              checked={fixed.includes(name)}
              onChange={(event) =>
                fields.type(
                  'fixed',
                  (event.currentTarget.checked ? [...fixed, name] : fixed.filter((one) => one !== name)).join('\n'),
                )
              }
            />
            {name}
          </label>
        ))}
      </fieldset>
      <p className={styles.note}>
        {keepOuts === 0
          ? 'The head has no keep-outs: anywhere on it is allowed.'
          : `${keepOuts === 1 ? 'The keep-out' : `The ${keepOuts} keep-outs`} of the head ${keepOuts === 1 ? 'stays' : 'stay'} free, with ${keepOuts === 1 ? 'its' : 'their'} clearance.`}
      </p>
    </>
  );
}
