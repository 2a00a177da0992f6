import { Button, Menu } from '@mantine/core';
import { Icon } from '../app/icons.tsx';
import { GRIDS } from '../state/grid.ts';
import { type MirrorChoice, mirrorAxesOf } from '../state/mirror.ts';
import { addThing } from '../state/things.ts';
import { useModel, useView, useWorkbench } from '../state/use-workbench.ts';
import styles from './stage.module.css';

const MIRRORS: readonly { value: MirrorChoice; label: string }[] = [
  { value: 'off', label: 'off' },
  { value: 'x', label: 'left and right' },
  { value: 'y', label: 'front and back' },
  { value: 'both', label: 'both' },
];

/** What can be put on the head, and how a drag works. */
export function EditTools() {
  const workbench = useWorkbench();
  const { view } = workbench;
  const grid = useView((state) => state.grid);
  const chosen = useView((state) => state.mirror);
  const axes = useModel((model) => mirrorAxesOf(chosen, model));
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
      <label
        className={styles.choice}
        title="What lies opposite moves along (M). Without a choice, as the fasteners lie."
      >
        Mirror
        <select
          className={styles.select}
          data-testid="mirror"
          data-on={axes !== null || undefined}
          value={axes ?? 'off'}
          onChange={(event) => view.setState({ mirror: choiceOf(event.currentTarget.value) })}
        >
          {MIRRORS.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
    </fieldset>
  );
}

function choiceOf(value: string): MirrorChoice {
  return MIRRORS.find((choice) => choice.value === value)?.value ?? 'off';
}
