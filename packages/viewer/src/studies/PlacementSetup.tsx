import { useModel } from '../state/use-workbench.ts';
import { ChoiceSetup, type Fields, NumberSetup } from './SetupFields.tsx';
import styles from './studies.module.css';

/** Where fasteners may go, and what for. */
export function PlacementSetup({ fields }: { fields: Fields }) {
  const fasteners = useModel(({ fasteners }) => fasteners);
  const hasFrame = useModel(({ frame }) => frame !== undefined);
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
          { value: 'x', label: 'left and right' },
          { value: 'y', label: 'front and back' },
          { value: 'none', label: 'not' },
        ]}
      />
      {hasFrame && (
        <ChoiceSetup
          {...{ fields }}
          field="through"
          label="Screws through"
          options={[
            { value: 'auto', label: 'frame if it has room' },
            { value: 'frame', label: 'frame only' },
            { value: 'body', label: 'body' },
            { value: 'either', label: 'either' },
          ]}
        />
      )}
      <NumberSetup
        {...{ fields }}
        field="edge"
        label={hasFrame ? 'From its edge' : 'From edges'}
        unit="mm"
        empty="none"
      />
      <NumberSetup {...{ fields }} field="clearance" label="Clear of probe fields" unit="mm" />
      <NumberSetup {...{ fields }} field="spacing" label="Screw to screw" unit="mm" empty="touching" />
      <NumberSetup {...{ fields }} field="step" label="Grid" unit="mm" empty="any place" />
      <ChoiceSetup
        {...{ fields }}
        field="objective"
        label="Minimise"
        options={[
          { value: 'bow', label: 'bow' },
          { value: 'flatness', label: 'flatness' },
          { value: 'share', label: 'both, as shares of their limits' },
        ]}
      />
      <ChoiceSetup
        {...{ fields }}
        field="curve"
        label="Also compare"
        options={[
          { value: 'none', label: 'nothing' },
          { value: 'count', label: 'other numbers of fasteners' },
          { value: 'clearance', label: 'other clearances' },
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
