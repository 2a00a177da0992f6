import { BENCH, PAGES } from './pages.ts';
import styles from './top-bar.module.css';
import { usePage } from './use-page.ts';

/** Ways to the pages: plain links, so that the browser's own back and forward work. */
export function PageTabs() {
  const page = usePage();
  return (
    <nav className={styles.pages} aria-label="Pages">
      {[BENCH, ...PAGES].map(({ id, label }) => (
        <a
          key={id}
          className={styles.page}
          href={`#${id}`}
          aria-current={id === page ? 'page' : undefined}
          data-testid={`page-${id}`}
        >
          {label}
        </a>
      ))}
    </nav>
  );
}
