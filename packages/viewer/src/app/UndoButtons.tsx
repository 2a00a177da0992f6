import { ActionIcon, Tooltip } from '@mantine/core';
import { useStore } from 'zustand';
import { hasDrafts } from '../state/draft-store.ts';
import { undo } from '../state/undo.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { Icon } from './icons.tsx';
import styles from './top-bar.module.css';

export function UndoButtons() {
  const workbench = useWorkbench();
  const { head, history, drafts } = workbench;
  const model = useModel((model) => model);
  const drafted = useStore(drafts, (state) => hasDrafts(state, model));
  const past = useStore(head.temporal, (state) => state.pastStates.length);
  const future = useStore(head.temporal, (state) => state.futureStates.length);
  return (
    <div className={styles.group}>
      <Tooltip label="Undo (Ctrl Z)" openDelay={400}>
        <ActionIcon
          variant="subtle"
          color="gray"
          className={styles.button}
          aria-label="Undo"
          data-testid="undo"
          disabled={past === 0 && !drafted}
          onClick={() => undo(workbench)}
        >
          <Icon name="undo" />
        </ActionIcon>
      </Tooltip>
      <Tooltip label="Redo (Ctrl Shift Z)" openDelay={400}>
        <ActionIcon
          variant="subtle"
          color="gray"
          className={styles.button}
          aria-label="Redo"
          data-testid="redo"
          disabled={future === 0}
          onClick={history.redo}
        >
          <Icon name="redo" />
        </ActionIcon>
      </Tooltip>
    </div>
  );
}
