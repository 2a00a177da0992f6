import { Button, Menu } from '@mantine/core';
import { useState } from 'react';
import { clearRecent, type Recent, recentFiles } from '../keeping/recent.ts';
import { browserStorage } from '../keeping/storage.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import { copyLink } from './copy-link.ts';
import { Icon } from './icons.tsx';
import { openText } from './open-content.ts';
import { saveWorkbook } from './save-file.ts';
import styles from './top-bar.module.css';

/** More of files: the whole workbook, a link, other programs' files, and what was open lately. */
export function FilesMenu() {
  const workbench = useWorkbench();
  const [recent, setRecent] = useState<readonly Recent[]>([]);
  const look = (): void => {
    recentFiles(browserStorage).then(setRecent, () => setRecent([]));
  };
  return (
    <Menu position="bottom-start" shadow="md" width={340} onOpen={look}>
      <Menu.Target>
        <Button
          variant="subtle"
          color="gray"
          size="compact-sm"
          className={styles.button}
          rightSection={<Icon name="down" size={13} />}
          data-testid="files"
        >
          Files
        </Button>
      </Menu.Target>
      <Menu.Dropdown className={styles.dropdown}>
        <Menu.Item data-testid="save-workbook" onClick={() => saveWorkbook(workbench.head.getState().book)}>
          <span className={styles.example}>Save all variants</span>
          <span className={styles.exampleNote}>the whole shelf in one workbook file</span>
        </Menu.Item>
        <Menu.Item data-testid="copy-link" onClick={() => void copyLink(workbench)}>
          <span className={styles.example}>Copy a link</span>
          <span className={styles.exampleNote}>that holds the head on the bench</span>
        </Menu.Item>
        <Menu.Divider />
        <Menu.Item data-testid="files-import" onClick={() => workbench.view.setState({ dialog: 'import' })}>
          <span className={styles.example}>Import</span>
          <span className={styles.exampleNote}>probes, outlines, keep-outs, heights, fasteners of other programs</span>
        </Menu.Item>
        <Menu.Item data-testid="files-export" onClick={() => workbench.view.setState({ dialog: 'export' })}>
          <span className={styles.example}>Export</span>
          <span className={styles.exampleNote}>the head and its results for other programs</span>
        </Menu.Item>
        <Menu.Divider />
        <Menu.Label>Recent</Menu.Label>
        {recent.length === 0 && <p className={styles.none}>Files you open or save are listed here.</p>}
        {recent.map(({ name, hash, heads, at, text }) => (
          <Menu.Item key={text} data-testid="recent" onClick={() => openText(workbench, name, text)}>
            <span className={styles.example}>{name}</span>
            <span className={styles.exampleNote}>
              {heads > 1 ? `${heads} heads, ` : ''}
              <code>{hash}</code>, {new Date(at).toLocaleString()}
            </span>
          </Menu.Item>
        ))}
        {recent.length > 0 && (
          <Menu.Item data-testid="clear-recent" onClick={() => void clearRecent(browserStorage).catch(() => {})}>
            Clear the recent files
          </Menu.Item>
        )}
      </Menu.Dropdown>
    </Menu>
  );
}
