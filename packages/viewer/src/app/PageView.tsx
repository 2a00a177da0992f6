import { Loader } from '@mantine/core';
import { Suspense } from 'react';
import styles from './app.module.css';
import { CompactVerdict } from './CompactVerdict.tsx';
import { PAGES } from './pages.ts';
import { usePage } from './use-page.ts';

/** The page of the address in the place of the bench, under the verdict. */
export function PageView() {
  const id = usePage();
  const entry = PAGES.find((page) => page.id === id);
  if (entry === undefined) return null;
  const { Page, label } = entry;
  return (
    <main className={styles.other} aria-label={label} data-testid={`open-${id}`}>
      <CompactVerdict />
      <div className={styles.scroll}>
        <Suspense fallback={<Loader className={styles.waiting} size="sm" aria-label={`Opening ${label}`} />}>
          <Page />
        </Suspense>
      </div>
    </main>
  );
}
