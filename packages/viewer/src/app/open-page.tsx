import '@mantine/core/styles/baseline.css';
import '@mantine/core/styles/default-css-variables.css';
import '@mantine/core/styles/global.css';
import '@mantine/core/styles/UnstyledButton.css';
import '@mantine/core/styles/VisuallyHidden.css';
import '@mantine/core/styles/Loader.css';
import '@mantine/core/styles/Popover.css';
import '@mantine/core/styles/ActionIcon.css';
import '@mantine/core/styles/Button.css';
import '@mantine/core/styles/FloatingIndicator.css';
import '@mantine/core/styles/Input.css';
import '@mantine/core/styles/Menu.css';
import '@mantine/core/styles/SegmentedControl.css';
import '@mantine/core/styles/Slider.css';
import '@mantine/core/styles/Tooltip.css';
import './theme.css';
import { createRoot } from 'react-dom/client';
import type { Connect } from '../solver-client/runner.ts';
import { notify } from '../state/notice-store.ts';
import { createWorkbench, type Workbench } from '../state/workbench.ts';
import { benchModel, type Workbook, workbookOf } from '../state/workbook.ts';
import { App } from './App.tsx';
import { kestrel } from './examples.ts';
import { keepOffline } from './keep-offline.ts';
import { KeepingContext, keepWork, keptWork } from './keep-work.ts';
import { replaceBook } from './open-content.ts';

/** Opens the page on the work of the last visit, or on Kestrel. */
export async function openPage(connect: Connect, connectBackground: Connect): Promise<void> {
  const found = await keptWork();
  const workbench = createWorkbench(found.book ?? kestrel, connect, connectBackground);
  if (found.book && (found.book.variants.length > 1 || benchModel(found.book).name !== kestrel.name))
    tellRestored(workbench, found.book, new Date(found.at));
  const keeping = keepWork(workbench, found);
  keepOffline(workbench);
  createRoot(document.getElementById('root')!).render(
    <KeepingContext value={keeping}>
      <App workbench={workbench} />
    </KeepingContext>,
  );
}

function tellRestored(workbench: Workbench, book: Workbook, at: Date): void {
  const others = book.variants.length - 1;
  const more = others === 0 ? '' : ` and ${others} ${others === 1 ? 'variant' : 'variants'} more`;
  notify(workbench.notices, {
    tone: 'info',
    title: 'Your last work is back',
    text: `${benchModel(book).name}${more}, as left on ${at.toLocaleString()}.`,
    action: { label: 'Start from Kestrel', run: () => replaceBook(workbench, workbookOf([kestrel])) },
  });
}
