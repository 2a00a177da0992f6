import { Button, Menu } from '@mantine/core';
import { useWorkbench } from '../state/use-workbench.ts';
import { withVariant } from '../state/workbook.ts';
import { examples } from './examples.ts';
import { Icon } from './icons.tsx';
import styles from './top-bar.module.css';

/** Heads to start from. Choosing one is a step of undo like any edit. */
export function ExamplesMenu() {
  const { history, view } = useWorkbench();
  return (
    <Menu position="bottom-start" shadow="md" width={300}>
      <Menu.Target>
        <Button
          variant="subtle"
          color="gray"
          size="compact-sm"
          className={styles.button}
          rightSection={<Icon name="down" size={13} />}
          data-testid="examples"
        >
          Examples
        </Button>
      </Menu.Target>
      <Menu.Dropdown>
        {examples.map(({ label, note, model }) => (
          <Menu.Item
            key={label}
            onClick={() => {
              history.editBook((book) => withVariant(book, model));
              view.setState(({ homeCalls }) => ({ caseName: null, exaggeration: null, homeCalls: homeCalls + 1 }));
            }}
          >
            <span className={styles.example}>{label}</span>
            <span className={styles.exampleNote}>{note}</span>
          </Menu.Item>
        ))}
      </Menu.Dropdown>
    </Menu>
  );
}
