import { ActionIcon, Tooltip } from '@mantine/core';
import { useWorkbench } from '../state/use-workbench.ts';
import styles from './top-bar.module.css';

/** Opens the sheet of keys. */
export function KeysButton() {
  const { view } = useWorkbench();
  return (
    <Tooltip label="Keys (?)" openDelay={400}>
      <ActionIcon
        variant="subtle"
        color="gray"
        className={styles.button}
        aria-label="Keys of the page"
        data-testid="keys"
        onClick={() => view.setState({ dialog: 'keys' })}
      >
        ?
      </ActionIcon>
    </Tooltip>
  );
}
