import { useWindowEvent } from '@mantine/hooks';
import { useWorkbench } from '../state/use-workbench.ts';
import { openFile } from './open-content.ts';
import { shortcutFor } from './shortcuts.ts';
import { singleKeys } from './single-keys.ts';

/** Keys of the whole page, and files dropped on it. */
export function Shortcuts() {
  const workbench = useWorkbench();
  useWindowEvent('keydown', (event) => {
    const shortcut = shortcutFor(event, singleKeys());
    // What lies over the page has its own keys.
    if (shortcut === null || workbench.view.getState().dialog !== null) return;
    event.preventDefault();
    shortcut.run(workbench);
  });
  useWindowEvent('dragover', (event) => event.preventDefault());
  useWindowEvent('drop', (event) => {
    event.preventDefault();
    for (const file of event.dataTransfer?.files ?? []) void openFile(workbench, file);
  });
  return null;
}
