import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react';
import { PlanMap } from '../charts/PlanMap.tsx';
import { differenceText } from '../state/difference/differences.ts';
import { shownCase } from '../state/shown-case.ts';
import { useLast } from '../state/use-last.ts';
import { useView, useWorkbench } from '../state/use-workbench.ts';
import type { Variant } from '../state/workbook.ts';
import styles from './shelf.module.css';
import { useBook, useDifferences, useFullAnswer, useIsReference, useReference } from './use-shelf.ts';
import { VariantMenu } from './VariantMenu.tsx';
import { VariantName } from './VariantName.tsx';
import { VariantVerdict } from './VariantVerdict.tsx';
import { remove, shift } from './variant-actions.ts';

const THUMB = 104;

/** A variant on the shelf: press it to put it on the bench, drag it to another place. */
export function VariantCard({ variant, onDropped }: { variant: Variant; onDropped: (dragged: string) => void }) {
  const workbench = useWorkbench();
  const { id, model } = variant;
  const { bench, variants } = useBook();
  const several = variants.length > 1;
  const reference = useReference(variant);
  const isReference = useIsReference(variant);
  const changes = useDifferences(reference?.model ?? model, model);
  const [renaming, setRenaming] = useState(false);
  const [over, setOver] = useState(false);
  const words = differenceText(changes);
  const card = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (id === bench) card.current?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [id, bench]);
  const keys = (event: KeyboardEvent): void => {
    const by = event.key === 'ArrowLeft' ? -1 : event.key === 'ArrowRight' ? 1 : 0;
    if (event.ctrlKey || event.metaKey || (by === 0 && event.key !== 'F2' && event.key !== 'Delete')) return;
    event.preventDefault();
    if (event.key === 'F2') setRenaming(true);
    else if (event.key === 'Delete') remove(workbench, variant);
    else if (event.altKey) shift(workbench, id, by);
    else step(event, by);
  };
  return (
    <li
      ref={card}
      className={styles.card}
      data-testid={`variant-${model.name}`}
      data-bench={id === bench || undefined}
      data-over={over || undefined}
      draggable={!renaming}
      onDragStart={(event) => {
        event.dataTransfer.setData(VARIANT, id);
        event.dataTransfer.effectAllowed = 'move';
      }}
      onDragOver={(event) => {
        if (event.dataTransfer.types.includes(VARIANT)) setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        setOver(false);
        const dragged = event.dataTransfer.getData(VARIANT);
        if (dragged !== '') onDropped(dragged);
      }}
    >
      <Thumbnail variant={variant} />
      <div className={styles.words}>
        {renaming ? (
          <VariantName variant={variant} onDone={() => setRenaming(false)} />
        ) : (
          <button
            type="button"
            className={styles.name}
            aria-current={id === bench}
            aria-keyshortcuts="F2 Delete Alt+ArrowLeft Alt+ArrowRight"
            title={id === bench ? `${model.name} is on the bench` : `Put ${model.name} on the bench`}
            onClick={() => workbench.history.putOnBench(id)}
            onDoubleClick={() => setRenaming(true)}
            onKeyDown={keys}
          >
            {model.name}
          </button>
        )}
        <VariantVerdict model={model} />
        {reference !== null ? (
          <p
            className={styles.difference}
            title={`Against ${reference.model.name}: ${words}`}
            data-testid="variant-difference"
          >
            {words === '' ? `Same as ${reference.model.name}` : words}
          </p>
        ) : (
          several && <p className={styles.difference}>{isReference ? 'Reference' : 'Independent head'}</p>
        )}
      </div>
      <VariantMenu variant={variant} onRename={() => setRenaming(true)} />
    </li>
  );
}

/** Kind of what is dragged along the shelf. */
const VARIANT = 'application/x-flathead-variant';

/** The head from above, as it was last solved in full. */
function Thumbnail({ variant: { model } }: { variant: Variant }) {
  const answer = useFullAnswer(model);
  const caseName = useView((view) => view.caseName);
  const solved = useMemo(() => (answer?.kind === 'solved' ? { model, result: answer.result } : null), [answer, model]);
  const shown = useLast(solved);
  const head = useMemo(
    () => shown && { ...shown, caseName: shownCase(shown.result, caseName).name },
    [shown, caseName],
  );
  return (
    <span className={styles.thumb} data-stale={answer?.kind !== 'solved' || undefined} aria-hidden="true">
      {head && <PlanMap head={head} width={THUMB} detail="outlines" label="" />}
    </span>
  );
}

/** Goes to the next card. */
function step({ currentTarget }: KeyboardEvent, by: number): void {
  const all = [...(currentTarget.closest('ul')?.querySelectorAll<HTMLElement>(`button[aria-current]`) ?? [])];
  all[all.indexOf(currentTarget as HTMLElement) + by]?.focus();
}
