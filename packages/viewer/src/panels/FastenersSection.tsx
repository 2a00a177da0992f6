import { useState } from 'react';
import { Icon } from '../app/icons.tsx';
import { withNewFastener } from '../state/recipe-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { DETAIL_KEYS } from './FastenerDetail.tsx';
import { FastenerRow } from './FastenerRow.tsx';
import { Section } from './Section.tsx';
import styles from './section.module.css';

const KEYS = ['name', 'at', 'at.0', 'at.1', 'screw'];

/** Where the head is screwed to the board, and what each screw carries in the case shown. */
export function FastenersSection() {
  const { history } = useWorkbench();
  const count = useModel((model) => model.fasteners.length);
  const [open, setOpen] = useState<number | null>(null);
  const claimed = Array.from({ length: count }, (_, i) =>
    [...KEYS, ...(open === i ? DETAIL_KEYS : [])].map((key) => `fasteners.${i}.${key}`),
  ).flat();
  return (
    <Section title="Fasteners" aside={`${count} in all; drag them on the head`} of="fasteners" claimed={claimed}>
      <div className={styles.table} style={{ gridTemplateColumns: '18px 39px 1fr 1fr 74px 46px 18px', columnGap: 3 }}>
        <span />
        <span className={styles.column}>Name</span>
        <span className={styles.columnRight}>x, mm</span>
        <span className={styles.columnRight}>y, mm</span>
        <span className={styles.column}>Screw</span>
        <span
          className={styles.columnRight}
          title="Force that it holds the head back with; below zero it pushes the head off"
        >
          hold, N
        </span>
        <span />
        {Array.from({ length: count }, (_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a fastener is its place in the list; names may repeat while typed
          <FastenerRow key={i} index={i} open={open === i} onToggle={() => setOpen(open === i ? null : i)} />
        ))}
      </div>
      <div className={styles.foot}>
        <button
          type="button"
          className={styles.add}
          data-testid="add-fastener"
          onClick={() => history.edit(withNewFastener)}
        >
          <Icon name="plus" size={14} /> Add a fastener
        </button>
      </div>
    </Section>
  );
}
