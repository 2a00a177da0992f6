import { ActionIcon, SegmentedControl, Tooltip } from '@mantine/core';
import { Icon } from '../app/icons.tsx';
import { useModel, useView, useWorkbench } from '../state/use-workbench.ts';
import styles from './stage.module.css';

/** How to look at the head. */
export function StageTools() {
  const { view } = useWorkbench();
  const kind = useView((state) => state.view);
  const quantity = useView((state) => state.quantity);
  const sprung = useModel(({ sites }) => sites.probes.rate !== undefined);
  return (
    <div className={styles.tools}>
      <SegmentedControl
        size="xs"
        aria-label="Colours of the stage"
        data-testid="quantity"
        data={[
          { value: 'deviation', label: 'Bow' },
          { value: 'tension', label: 'Tension' },
          { value: 'contact', label: 'Contact', disabled: !sprung && quantity !== 'contact' },
        ]}
        value={quantity}
        onChange={(value) =>
          view.setState({ quantity: value === 'tension' || value === 'contact' ? value : 'deviation' })
        }
      />
      <SegmentedControl
        size="xs"
        aria-label="View"
        data={[
          { value: 'perspective', label: '3-D' },
          { value: 'above', label: 'From above' },
        ]}
        value={kind}
        onChange={(value) => view.setState({ view: value === 'above' ? 'above' : 'perspective' })}
      />
      <Tooltip label="Whole head (H)" openDelay={400}>
        <ActionIcon
          variant="default"
          size={28}
          aria-label="Show the whole head"
          onClick={() => view.setState(({ homeCalls }) => ({ homeCalls: homeCalls + 1 }))}
        >
          <Icon name="home" size={16} />
        </ActionIcon>
      </Tooltip>
    </div>
  );
}
