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
import { createWorkbench } from '../state/workbench.ts';
import { App } from './App.tsx';
import { autosave, restoredHead } from './autosave.ts';
import { kestrel } from './examples.ts';

/** Opens the page on the head of the last visit, or on Kestrel. */
export async function openPage(connect: Connect, connectBackground: Connect): Promise<void> {
  const restored = await restoredHead();
  const workbench = createWorkbench(restored?.model ?? kestrel, connect, connectBackground);
  autosave(workbench);
  if (restored && JSON.stringify(restored.model) !== JSON.stringify(kestrel))
    notify(workbench.notices, {
      tone: 'info',
      title: 'Your last head is back',
      text: `${restored.model.name}, as left on ${restored.at.toLocaleString()}.`,
      action: { label: 'Start from Kestrel', run: () => workbench.history.edit(() => kestrel) },
    });
  createRoot(document.getElementById('root')!).render(<App workbench={workbench} />);
}
