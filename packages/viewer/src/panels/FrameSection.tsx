import { withFrame } from '../state/recipe-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { Choice } from './Choice.tsx';
import { FreeRibRows, ribFields } from './FreeRibRows.tsx';
import { GapRibRows } from './GapRibRows.tsx';
import { MaterialRow } from './MaterialRow.tsx';
import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';
import { Section } from './Section.tsx';
import { ShapeRows, shapeFields } from './ShapeRows.tsx';
import { Toggle } from './Toggle.tsx';

const CLAIMED = [
  ...['outer', 'window'].flatMap((key) => shapeFields(`frame.${key}`)),
  ...['material', 'thickness', 'side', 'join'].map((key) => `frame.${key}`),
];
const SIDES = [
  { value: 'board', label: 'Board side' },
  { value: 'device', label: 'Device side' },
  { value: 'level', label: 'Half on either face' },
];
const JOINS = [
  { value: 'sliding', label: 'Sliding: no composite action' },
  { value: 'bonded', label: 'Bonded' },
  { value: 'bracket', label: 'Bracket: the worse of both' },
];

/** The frame around the sites, and the ribs that extend it between them. */
export function FrameSection() {
  const { history } = useWorkbench();
  const on = useModel(({ frame }) => frame !== undefined);
  const ribs = useModel(({ frame }) => frame?.ribs?.length ?? 0);
  return (
    <Section
      title="Frame and ribs"
      of="frame"
      claimed={[...CLAIMED, ...ribFields(ribs)]}
      aside={
        <Toggle
          label="Frame"
          testId="frame-switch"
          on={on}
          onChange={(wanted) => history.edit((model) => withFrame(model, wanted))}
        />
      }
    >
      {on && (
        <>
          <ShapeRows path="frame.outer" label="Outer edge" name="Frame outer edge" />
          <ShapeRows path="frame.window" label="Window" name="Frame window" />
          <Row label="Thickness">
            <NumberField path="frame.thickness" name="Frame thickness" unit="mm" step={0.5} />
          </Row>
          <MaterialRow path="frame.material" name="Frame material" />
          <Row label="Sits on">
            <Choice path="frame.side" name="Side of the frame" options={SIDES} />
          </Row>
          <Row label="Join">
            <Choice path="frame.join" name="Join of the frame" options={JOINS} />
          </Row>
          <GapRibRows between="columns" />
          <GapRibRows between="rows" />
          <FreeRibRows />
        </>
      )}
    </Section>
  );
}
