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
import './app/theme.css';
import { createRoot } from 'react-dom/client';
import { App } from './app/App.tsx';
import { autosave, restoredHead } from './app/autosave.ts';
import { kestrel } from './app/examples.ts';
import { connectWorker } from './solver-client/connect-worker.ts';
import { notify } from './state/notice-store.ts';
import { createWorkbench } from './state/workbench.ts';

const restored = await restoredHead();
const workbench = createWorkbench(restored?.model ?? kestrel, connectWorker);
autosave(workbench);
if (restored)
  notify(workbench.notices, {
    tone: 'info',
    title: 'Your last head is back',
    text: `${restored.model.name}, as left on ${restored.at.toLocaleString()}.`,
    action: { label: 'Start from Kestrel', run: () => workbench.history.edit(() => kestrel) },
  });
createRoot(document.getElementById('root')!).render(<App workbench={workbench} />);
