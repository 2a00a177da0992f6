import { screws } from '@flathead/solver';
import { Icon } from '../app/icons.tsx';
import { forceDigits } from '../format/number.ts';
import { withoutFastener } from '../state/recipe-edits.ts';
import { shownCase } from '../state/shown-case.ts';
import { useModel, useRun, useView, useWorkbench } from '../state/use-workbench.ts';
import { Choice } from './Choice.tsx';
import { FastenerDetail } from './FastenerDetail.tsx';
import { NumberField } from './NumberField.tsx';
import styles from './section.module.css';
import { TextField } from './TextField.tsx';

const SCREWS = Object.keys(screws).map((size) => ({ value: size, label: size }));

interface FastenerRowProps {
  readonly index: number;
  /** Whether its detail is in sight. */
  readonly open: boolean;
  onToggle(): void;
}

/** One fastener: name, place, screw, and the force that it holds the head back with. */
export function FastenerRow({ index, open, onToggle }: FastenerRowProps) {
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
      <button
        type="button"
        className={styles.unfold}
        aria-expanded={open}
        aria-label={`Preload and stiffness of ${name}`}
        title="Preload, strength and stiffness"
        data-testid={`unfold-fastener-${name}`}
        onClick={onToggle}
      >
        <Icon name="down" size={14} weight={2} />
      </button>
      <TextField path={`${path}.name`} name={`Name of fastener ${index + 1}`} />
      <NumberField path={`${path}.at.0`} name={`${name} x`} step={0.5} forPair />
      <NumberField path={`${path}.at.1`} name={`${name} y`} step={0.5} />
      <Choice path={`${path}.screw`} name={`Screw of ${name}`} options={SCREWS} />
      <span className={styles.value}>{reaction === undefined ? '' : forceDigits(-reaction)}</span>
      <button
        type="button"
        className={styles.remove}
        aria-label={`Remove ${name}`}
        data-testid={`remove-fastener-${name}`}
        onClick={() => history.edit((model) => withoutFastener(model, index))}
      >
        <Icon name="cross" size={13} />
      </button>
      {open && <FastenerDetail index={index} />}
    </>
  );
}
