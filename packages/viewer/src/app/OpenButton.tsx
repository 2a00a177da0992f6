import { Button, Tooltip } from '@mantine/core';
import { useRef } from 'react';
import { useWorkbench } from '../state/use-workbench.ts';
import { Icon } from './icons.tsx';
import { openFile } from './open-content.ts';
import styles from './top-bar.module.css';

export function OpenButton() {
  const workbench = useWorkbench();
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Tooltip label="Open a head or a workbook, or drop the file on the page (Ctrl O)" openDelay={400}>
        <Button
          variant="subtle"
          color="gray"
          size="compact-sm"
          className={styles.button}
          leftSection={<Icon name="open" size={16} />}
          data-testid="open"
          onClick={() => input.current?.click()}
        >
          Open
        </Button>
      </Tooltip>
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        hidden
        aria-label="Model file"
        data-testid="open-file"
        onChange={(event) => {
          const field = event.currentTarget;
          const file = field.files?.[0];
          if (file) void openFile(workbench, file);
          field.value = '';
        }}
      />
    </>
  );
}
