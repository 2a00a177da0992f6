import { screws } from '@flathead/solver';
import { Icon } from '../app/icons.tsx';
import { withoutFastener } from '../state/recipe-edits.ts';
import { shownCase } from '../state/shown-case.ts';
import { useModel, useRun, useView, useWorkbench } from '../state/use-workbench.ts';
import { Choice } from './Choice.tsx';
import { NumberField } from './NumberField.tsx';
import styles from './section.module.css';
import { TextField } from './TextField.tsx';

const SCREWS = Object.keys(screws).map((size) => ({ value: size, label: size }));

/** One fastener: name, place, screw, and the force that it holds the head back with. */
export function FastenerRow({ index }: { index: number }) {
  const { history } = useWorkbench();
  const name = useModel((model) => model.fasteners[index]?.name ?? '');
  const caseName = useView((view) => view.caseName);
  const reaction = useRun(({ solved }) =>
    solved
      ? shownCase(solved.result, caseName).fasteners.find((fastener) => fastener.name === name)?.reaction
      : undefined,
  );
  const path = `fasteners.${index}`;
  return (
    <>
      <TextField path={`${path}.name`} name={`Name of fastener ${index + 1}`} />
      <NumberField path={`${path}.at.0`} name={`${name} x`} step={0.5} forPair />
      <NumberField path={`${path}.at.1`} name={`${name} y`} step={0.5} />
      <Choice path={`${path}.screw`} name={`Screw of ${name}`} options={SCREWS} />
      <span className={styles.value}>{reaction === undefined ? '' : holding(reaction)}</span>
      <button
        type="button"
        className={styles.remove}
        aria-label={`Remove ${name}`}
        data-testid={`remove-fastener-${name}`}
        onClick={() => history.edit((model) => withoutFastener(model, index))}
      >
        <Icon name="cross" size={13} />
      </button>
    </>
  );
}

/** Force that holds the head back to the board, N; with a minus where it pushes the head away. */
function holding(reaction: number): string {
  const text = Math.abs(reaction).toFixed(Math.abs(reaction) < 100 ? 1 : 0);
  return reaction > 0 && Number(text) > 0 ? `\u2212${text}` : text;
}
