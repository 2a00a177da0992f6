import { MantineProvider } from '@mantine/core';
import { lazy, Suspense, useState } from 'react';
import { NumbersPanel } from '../panels/NumbersPanel.tsx';
import { Recipe } from '../panels/Recipe.tsx';
import { VerdictStrip } from '../panels/VerdictStrip.tsx';
import { WorkbenchContext } from '../state/use-workbench.ts';
import type { Workbench } from '../state/workbench.ts';
import styles from './app.module.css';
import { Dialogs } from './Dialogs.tsx';
import { lazyStage } from './lazy-stage.ts';
import { Notices } from './Notices.tsx';
import { PageView } from './PageView.tsx';
import { Shortcuts } from './Shortcuts.tsx';
import { SkipLinks } from './SkipLinks.tsx';
import { TopBar } from './TopBar.tsx';
import { theme } from './theme.ts';

const Shelf = lazy(() => import('../shelf/Shelf.tsx'));
const Compare = lazy(() => import('../shelf/Compare.tsx'));

/** The page: bar, recipe, verdict, stage, shelf; another page over them where the address names one. */
export function App({ workbench }: { workbench: Workbench }) {
  const [Stage] = useState(() => lazyStage(workbench.run));
  return (
    <MantineProvider theme={theme} defaultColorScheme="auto">
      <WorkbenchContext value={workbench}>
        <Shortcuts />
        <SkipLinks />
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
              <Notices brief />
              <Suspense>
                <Compare />
              </Suspense>
            </div>
            <Suspense fallback={<div className={styles.shelf} />}>
              <Shelf />
            </Suspense>
          </main>
          <PageView />
        </div>
        <Notices />
        <Dialogs />
      </WorkbenchContext>
    </MantineProvider>
  );
}
