import { Button, Tooltip } from '@mantine/core';
import { useWorkbench } from '../state/use-workbench.ts';
import { Icon } from './icons.tsx';
import styles from './top-bar.module.css';

/** Opens the guided start of a head of one's own. */
export function NewButton() {
  const { view } = useWorkbench();
  return (
    <Tooltip label="A head of your own from few questions (N)" openDelay={400}>
      <Button
        variant="subtle"
        size="compact-sm"
        leftSection={<Icon name="plus" size={15} />}
        className={`${styles.button} ${styles.new}`}
        data-testid="new-head"
        onClick={() => view.setState({ dialog: 'start' })}
      >
        New head
      </Button>
    </Tooltip>
  );
}
