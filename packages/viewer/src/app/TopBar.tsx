import { Button, Tooltip } from '@mantine/core';
import { TextField } from '../panels/TextField.tsx';
import { useWorkbench } from '../state/use-workbench.ts';
import { ExamplesMenu } from './ExamplesMenu.tsx';
import { FilesMenu } from './FilesMenu.tsx';
import { Icon } from './icons.tsx';
import { KeptMark } from './KeptMark.tsx';
import { KeysButton } from './KeysButton.tsx';
import { NewButton } from './NewButton.tsx';
import { OpenButton } from './OpenButton.tsx';
import { PageTabs } from './PageTabs.tsx';
import { saveModel } from './save-file.ts';
import { ThemeSwitch } from './ThemeSwitch.tsx';
import styles from './top-bar.module.css';
import { UndoButtons } from './UndoButtons.tsx';

/** Where one is, the head with its undo, files, and how the page looks. */
export function TopBar() {
  const { head } = useWorkbench();
  return (
    <header className={styles.bar}>
      <Mark />
      <PageTabs />
      <TextField path="name" name="Name of the head" className={styles.name} />
      <UndoButtons />
      <KeptMark />
      <span className={styles.gap} />
      <div className={styles.group}>
        <NewButton />
        <OpenButton />
        <Tooltip label="Save the head on the bench (Ctrl S)" openDelay={400}>
          <Button
            variant="subtle"
            color="gray"
            size="compact-sm"
            className={styles.button}
            leftSection={<Icon name="save" size={16} />}
            data-testid="save"
            onClick={() => saveModel(head.getState().model)}
          >
            Save
          </Button>
        </Tooltip>
        <FilesMenu />
        <ExamplesMenu />
      </div>
      <ThemeSwitch />
      <KeysButton />
    </header>
  );
}

/** A bowed line over a straight one. */
function Mark() {
  return (
    <svg className={styles.mark} viewBox="0 0 28 20" role="img" aria-label="Flathead">
      <path d="M3 15.5h22" stroke="currentColor" strokeWidth="1.6" strokeLinecap="round" opacity="0.45" />
      <path d="M3 15.5c6-11 16-11 22 0" fill="none" stroke="currentColor" strokeWidth="2.4" strokeLinecap="round" />
    </svg>
  );
}
