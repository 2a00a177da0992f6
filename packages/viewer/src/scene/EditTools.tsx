import { Button, Menu, SegmentedControl, Tooltip } from '@mantine/core';
import { Icon } from '../app/icons.tsx';
import { Toggle } from '../panels/Toggle.tsx';
import { GRIDS } from '../state/grid.ts';
import type { MirrorAxes } from '../state/mirror.ts';
import { addThing } from '../state/things.ts';
import { useModel, useView, useWorkbench } from '../state/use-workbench.ts';
import styles from './stage.module.css';

const AXES: readonly { value: MirrorAxes; label: string }[] = [
  { value: 'both', label: 'x and y' },
  { value: 'x', label: 'x' },
  { value: 'y', label: 'y' },
];

/** What can be put on the head, and how a drag works. */
export function EditTools() {
  const workbench = useWorkbench();
  const { view } = workbench;
  const grid = useView((state) => state.grid);
  const mirror = useView((state) => state.mirror);
  const axes = useView((state) => state.mirrorAxes);
  const framed = useModel(({ frame }) => frame !== undefined);
  return (
    <fieldset className={styles.edit} aria-label="Editing on the stage">
      <Menu position="bottom-start" shadow="md">
        <Menu.Target>
          <Button variant="default" size="compact-xs" leftSection={<Icon name="plus" size={12} />} data-testid="add">
            Add
          </Button>
        </Menu.Target>
        <Menu.Dropdown>
          <Menu.Item data-testid="add-on-stage-fastener" onClick={() => addThing(workbench, 'fastener')}>
            Fastener
          </Menu.Item>
          <Menu.Item data-testid="add-on-stage-keepOut" onClick={() => addThing(workbench, 'keepOut')}>
            Keep-out
          </Menu.Item>
          <Menu.Item data-testid="add-on-stage-rib" disabled={!framed} onClick={() => addThing(workbench, 'rib')}>
            {framed ? 'Rib' : 'Rib (needs a frame)'}
          </Menu.Item>
        </Menu.Dropdown>
      </Menu>
      <label className={styles.choice}>
        Snap
        <select
          className={styles.select}
          data-testid="snap"
          value={grid}
          onChange={(event) => view.setState({ grid: Number(event.currentTarget.value) })}
        >
          {GRIDS.map((size) => (
            <option key={size} value={size}>
              {size === 0 ? 'off' : `${size} mm`}
            </option>
          ))}
        </select>
      </label>
      <Tooltip label="What lies opposite moves along" openDelay={400}>
        <div>
          <Toggle
            label="Mirror drag"
            testId="mirror-drag"
            on={mirror}
            onChange={(on) => view.setState({ mirror: on })}
          />
        </div>
      </Tooltip>
      {mirror && (
        <SegmentedControl
          size="xs"
          aria-label="Mirror along"
          data-testid="mirror-axes"
          data={[...AXES]}
          value={axes}
          onChange={(value) => view.setState({ mirrorAxes: value === 'x' || value === 'y' ? value : 'both' })}
        />
      )}
    </fieldset>
  );
}
