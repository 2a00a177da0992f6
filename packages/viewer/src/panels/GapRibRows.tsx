import { gapRibIndex, withGapRibs } from '../state/recipe-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { NumberField } from './NumberField.tsx';
import { Row, Times } from './Row.tsx';
import { Toggle } from './Toggle.tsx';
import { WholeListField } from './WholeListField.tsx';

/** Ribs in the gaps between columns or rows: on or off, width and thickness. */
export function GapRibRows({ between }: { between: 'columns' | 'rows' }) {
  const { history } = useWorkbench();
  const index = useModel(({ frame }) => gapRibIndex(frame, between));
  const path = `frame.ribs.${index}`;
  return (
    <>
      <Row label={`Ribs between ${between}`}>
        <Toggle
          name={`Ribs between ${between}`}
          testId={`ribs-${between}`}
          on={index >= 0}
          onChange={(on) => history.edit((model) => withGapRibs(model, between, on))}
        />
      </Row>
      {index >= 0 && (
        <>
          <Row label="Width × thickness">
            <NumberField
              path={`${path}.width`}
              name={`Width of ribs between ${between}`}
              unit="mm"
              step={0.5}
              forPair
            />
            <Times />
            <NumberField
              path={`${path}.thickness`}
              name={`Thickness of ribs between ${between}`}
              unit="mm"
              step={0.5}
              empty="frame"
            />
          </Row>
          <Row label="Gaps without one">
            <WholeListField
              path={`${path}.skip`}
              name={`Gaps without a rib between ${between}, counted from 1`}
              help={`Gaps between ${between} without a rib, counted from 1, such as 2 4; every gap has one if left empty.`}
            />
          </Row>
        </>
      )}
    </>
  );
}
