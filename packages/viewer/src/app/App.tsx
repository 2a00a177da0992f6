import { MantineProvider } from '@mantine/core';
import { lazy, Suspense, useState } from 'react';
import { NumbersPanel } from '../panels/NumbersPanel.tsx';
import { Recipe } from '../panels/Recipe.tsx';
import { VerdictStrip } from '../panels/VerdictStrip.tsx';
import { WorkbenchContext } from '../state/use-workbench.ts';
import type { Workbench } from '../state/workbench.ts';
import styles from './app.module.css';
import { lazyStage } from './lazy-stage.ts';
import { Notices } from './Notices.tsx';
import { Shortcuts } from './Shortcuts.tsx';
import { TopBar } from './TopBar.tsx';
import { theme } from './theme.ts';

const Shelf = lazy(() => import('../shelf/Shelf.tsx'));
const Compare = lazy(() => import('../shelf/Compare.tsx'));

/** The page: bar, recipe, verdict, stage, shelf. */
export function App({ workbench }: { workbench: Workbench }) {
  const [Stage] = useState(() => lazyStage(workbench.run));
  return (
    <MantineProvider theme={theme} defaultColorScheme="auto">
      <WorkbenchContext value={workbench}>
        <Shortcuts />
        <div className={styles.page}>
          <TopBar />
          <Recipe />
          <main className={styles.bench}>
            <VerdictStrip />
            <div className={styles.view}>
              <Suspense fallback={<div className={styles.empty} />}>
                <Stage />
              </Suspense>
              <NumbersPanel />
              <Suspense>
                <Compare />
              </Suspense>
            </div>
            <Suspense fallback={<div className={styles.shelf} />}>
              <Shelf />
            </Suspense>
          </main>
        </div>
        <Notices />
      </WorkbenchContext>
    </MantineProvider>
  );
}
