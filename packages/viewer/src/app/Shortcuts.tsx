import { useWindowEvent } from '@mantine/hooks';
import { undo } from '../state/undo.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import { openFile } from './open-content.ts';
import { saveModel } from './save-file.ts';

/** Keys of the whole page, and files dropped on it. */
export function Shortcuts() {
  const workbench = useWorkbench();
  const { head, history, view } = workbench;
  useWindowEvent('keydown', (event) => {
    const key = event.key.toLowerCase();
    if (event.ctrlKey || event.metaKey) {
      const act = {
        z: event.shiftKey ? history.redo : () => undo(workbench),
        y: history.redo,
        s: () => saveModel(head.getState().model),
        o: () => document.querySelector<HTMLInputElement>('[data-testid="open-file"]')?.click(),
      }[key];
      if (act === undefined) return;
      event.preventDefault();
      act();
      return;
    }
    const typing = event.target instanceof HTMLElement && event.target.matches('input, select, textarea');
    if (key === 'h' && !typing && !event.altKey) view.setState(({ homeCalls }) => ({ homeCalls: homeCalls + 1 }));
  });
  useWindowEvent('dragover', (event) => event.preventDefault());
  useWindowEvent('drop', (event) => {
    event.preventDefault();
    for (const file of event.dataTransfer?.files ?? []) void openFile(workbench, file);
  });
  return null;
}
