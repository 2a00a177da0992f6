import { withCounterbore } from '../state/recipe-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { Choice } from './Choice.tsx';
import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';
import { Toggle } from './Toggle.tsx';

const BORE = 'sites.probes.holes.counterbore';
const SIDES = [
  { value: 'board', label: 'Board face' },
  { value: 'device', label: 'Device face' },
];

/** Paths of the fields here. */
export const COUNTERBORE_FIELDS = ['diameter', 'depth', 'side'].map((key) => `${BORE}.${key}`);

/** The wider step of the probe holes at one face, if they have one. */
export function CounterboreRows() {
  const { history } = useWorkbench();
  const on = useModel((model) => model.sites.probes.holes?.counterbore !== undefined);
  return (
    <>
      <Row label="Counterbored">
        <Toggle
          name="Holes counterbored at one face"
          testId="counterbore-switch"
          on={on}
          onChange={(wanted) => history.edit((model) => withCounterbore(model, wanted))}
        />
      </Row>
      {on && (
        <>
          <Row label="Counterbore diameter">
            <NumberField path={`${BORE}.diameter`} name="Diameter of the counterbores" unit="mm" step={0.01} />
          </Row>
          <Row label="Counterbore depth">
            <NumberField path={`${BORE}.depth`} name="Depth of the counterbores" unit="mm" step={0.1} />
          </Row>
          <Row label="From">
            <Choice path={`${BORE}.side`} name="Face of the counterbores" options={SIDES} />
          </Row>
        </>
      )}
    </>
  );
}
