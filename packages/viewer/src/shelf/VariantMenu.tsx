import { ActionIcon, Menu } from '@mantine/core';
import { Icon } from '../app/icons.tsx';
import { useView, useWorkbench } from '../state/use-workbench.ts';
import type { Variant } from '../state/workbook.ts';
import { useBook } from './use-shelf.ts';
import { duplicate, remove, shift } from './variant-actions.ts';

/** All that can be done with a variant, each with its key. */
export function VariantMenu({ variant, onRename }: { variant: Variant; onRename: () => void }) {
  const workbench = useWorkbench();
  const { variants } = useBook();
  const chosen = useView(({ reference }) => reference);
  const { id, model } = variant;
  const place = variants.findIndex((other) => other.id === id);
  return (
    <Menu position="top-end" shadow="md" width={230}>
      <Menu.Target>
        <ActionIcon
          variant="subtle"
          color="gray"
          size="sm"
          aria-label={`More of ${model.name}`}
          data-testid="variant-menu"
        >
          <Icon name="more" size={16} weight={2.6} />
        </ActionIcon>
      </Menu.Target>
      <Menu.Dropdown>
        <Menu.Item onClick={() => duplicate(workbench, id)}>Duplicate</Menu.Item>
        <Menu.Item rightSection="F2" onClick={onRename}>
          Rename
        </Menu.Item>
        <Menu.Item onClick={() => workbench.view.setState({ reference: id === chosen ? null : id })}>
          {id === chosen ? 'Compare each with its first' : 'Compare the others with it'}
        </Menu.Item>
        <Menu.Item disabled={place === 0} rightSection="Alt ←" onClick={() => shift(workbench, id, -1)}>
          Move left
        </Menu.Item>
        <Menu.Item
          disabled={place === variants.length - 1}
          rightSection="Alt →"
          onClick={() => shift(workbench, id, 1)}
        >
          Move right
        </Menu.Item>
        <Menu.Divider />
        <Menu.Item disabled={variants.length === 1} rightSection="Del" onClick={() => remove(workbench, variant)}>
          Delete
        </Menu.Item>
      </Menu.Dropdown>
    </Menu>
  );
}
