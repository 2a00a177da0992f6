import { memo } from 'react';
import { screwSize } from '../buffers/screw-size.ts';
import { seatHeight } from '../buffers/seat-height.ts';
import { forceDigits } from '../format/number.ts';
import { shownCase } from '../state/shown-case.ts';
import { useEarlier, useModel, usePointer, useRun, useView } from '../state/use-workbench.ts';
import { DragReadout } from './DragReadout.tsx';
import styles from './labels.module.css';
import { StageHandle } from './StageHandle.tsx';
import { Tag } from './Tag.tsx';

/** Forces below this are none, N. */
const PUSH = 0.05;
/** What counts more than any force. */
const [CHOSEN, DRAGGED] = [1e9, 2e9];

/** Handle of one fastener, with what it holds the head back with. @param linked it moves along with the chosen one */
export const FastenerHandle = memo(function FastenerHandle({ index, linked }: { index: number; linked: boolean }) {
  const grip = `fastener ${index}`;
  const fastener = useModel((model) => model.fasteners[index]);
  const z = useModel((model) => {
    const here = model.fasteners[index];
    return here ? seatHeight(model, here.at) + screwSize(here).height : 0;
  });
  const radius = useModel((model) => {
    const here = model.fasteners[index];
    return here ? screwSize(here).head / 2 : 0;
  });
  const dragged = usePointer((pointer) => pointer.dragged === grip);
  const selected = usePointer((pointer) => pointer.selected === grip);
  const earlier = useEarlier();
  const caseName = useView((view) => view.caseName);
  const force = useRun(({ solved }) =>
    solved
      ? shownCase(solved.result, caseName).fasteners.find((other) => other.name === fastener?.name)?.reaction
      : undefined,
  );
  if (fastener === undefined) return null;
  const { name, at } = fastener;
  const pushes = force !== undefined && force > PUSH;
  const held = force === undefined || dragged ? '' : ` ${pushes ? 'pushes ' : ''}${forceDigits(Math.abs(force))} N`;
  const stale = earlier && held !== '';
  const sense = force === undefined || force === 0 ? '' : force < 0 ? ', pulls' : '';
  return (
    <StageHandle
      grip={grip}
      at={at}
      z={z}
      radius={radius}
      form="fastener"
      linked={linked}
      testId={`fastener-${name}`}
      label={`Fastener ${name}${held}${held && sense}${stale ? ' in the last good answer,' : ''} at x ${at[0]}, y ${at[1]} mm. Drag it, move it with the arrow keys, or type x and y.`}
    >
      <Tag
        of={grip}
        weight={dragged ? DRAGGED : selected ? CHOSEN : Math.abs(force ?? 0)}
        kept={dragged || selected}
        stale={stale}
      >
        <span className={styles.called}>{name}</span>
        {held !== '' && (
          <span className={styles.force} data-pushes={pushes || undefined}>
            {held}
          </span>
        )}
        {dragged && <DragReadout grip={grip} at={at} />}
      </Tag>
    </StageHandle>
  );
});
