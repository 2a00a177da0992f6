import { withItem, withoutItem } from '../state/list-edits.ts';
import { valueAt } from '../state/set-value.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { AddButton, RemoveButton } from './ListButtons.tsx';
import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';

/** Young's modulus at other temperatures. */
export function HotModulusRows({ path, name }: { path: string; name: string }) {
  const { history } = useWorkbench();
  const list = `${path}.modulus`;
  const count = useModel((model) => {
    const value = valueAt(model, list);
    return Array.isArray(value) ? value.length : 0;
  });
  const cold = useModel((model) => valueAt(model, `${path}.E`));
  return (
    <>
      {Array.from({ length: count }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a value is its place in the list
        <Row key={i} label={i === 0 ? 'Modulus when warm' : ''}>
          <NumberField path={`${list}.${i}.0`} name={`Temperature ${i + 1} of ${name}`} unit="°C" step={10} forPair />
          <NumberField
            path={`${list}.${i}.1`}
            name={`Young's modulus of ${name} at temperature ${i + 1}`}
            unit="GPa"
            scale={0.001}
            step={5}
          />
          <RemoveButton
            name={`Remove temperature ${i + 1} of ${name}`}
            onClick={() => history.edit((model) => withoutItem(model, list, i))}
          />
        </Row>
      ))}
      <Row label="">
        <AddButton
          label="Modulus at another temperature"
          testId="add-hot-modulus"
          onClick={() => history.edit((model) => withItem(model, list, [100 * (count + 1), cold]))}
        />
      </Row>
    </>
  );
}
