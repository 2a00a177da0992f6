import { useModel } from '../state/use-workbench.ts';
import { studyParameters } from './parameters.ts';
import { rangeOf } from './plans.ts';
import { ChoiceSetup, type Fields, NumberSetup } from './SetupFields.tsx';

/** One or two numbers of the head, from where to where. */
export function SweepSetup({ fields }: { fields: Fields }) {
  const model = useModel((model) => model);
  const known = studyParameters(model);
  const options = known.map(({ path, label, unit }) => ({ value: path, label: `${label}, ${unit}` }));
  const second = fields.text('second');
  const unitOf = (path: string): string => known.find((one) => one.path === path)?.unit ?? '';
  const range = (suffix: string) => (path: string) => {
    for (const [field, text] of Object.entries(rangeOf(model, path, suffix))) fields.type(field, text);
  };
  return (
    <>
      <ChoiceSetup {...{ fields, options }} field="path" label="Vary" onChosen={range('')} />
      <NumberSetup {...{ fields }} field="from" label="From" unit={unitOf(fields.text('path'))} />
      <NumberSetup {...{ fields }} field="to" label="To" unit={unitOf(fields.text('path'))} />
      <NumberSetup {...{ fields }} field="count" label="Values" />
      <ChoiceSetup
        {...{ fields }}
        field="second"
        label="And"
        options={[{ value: '', label: 'nothing' }, ...options.filter(({ value }) => value !== fields.text('path'))]}
        onChosen={range('2')}
      />
      {second !== '' && (
        <>
          <NumberSetup {...{ fields }} field="from2" label="From" unit={unitOf(second)} />
          <NumberSetup {...{ fields }} field="to2" label="To" unit={unitOf(second)} />
          <NumberSetup {...{ fields }} field="count2" label="Values" />
        </>
      )}
    </>
  );
}
