import { gripsOf } from '../state/grips.ts';
import { useModel, usePointer } from '../state/use-workbench.ts';
import { DragReadout } from './DragReadout.tsx';
import styles from './labels.module.css';
import { StageHandle } from './StageHandle.tsx';
import { Tag } from './Tag.tsx';

/** Handles of ribs, site pitch and keep-outs. */
export function Grips() {
  const model = useModel((model) => model);
  const selected = usePointer((pointer) => pointer.selected);
  const dragged = usePointer((pointer) => pointer.dragged);
  const all = gripsOf(model, selected);
  if (all.length === 0) return null;
  return (
    <fieldset className={styles.layer} aria-label="Site pitch, ribs and keep-outs">
      {all.map(({ key, form, name, at, z, hangs, nudge }) => (
        <StageHandle
          key={key}
          grip={key}
          at={at}
          z={z}
          still={!hangs}
          nudge={nudge}
          form={form}
          testId={`grip-${key.replaceAll(' ', '-')}`}
          label={`${name}. Drag it, move it with the arrow keys, or type a value.`}
        >
          {dragged === key && (
            <Tag of={key} weight={Number.POSITIVE_INFINITY} kept>
              <span className={styles.called}>{form === 'pitch' ? 'pitch' : name}</span>
              <DragReadout grip={key} at={at} />
            </Tag>
          )}
        </StageHandle>
      ))}
    </fieldset>
  );
}
