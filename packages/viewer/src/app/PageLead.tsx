import type { ReactNode } from 'react';
import styles from './page.module.css';

interface PageLeadProps {
  readonly title: string;
  /** What the page is about. */
  readonly about: string;
  /** What it is told or started with, at its right. */
  readonly children: ReactNode;
}

/** Head of a page beside the bench. */
export function PageLead({ title, about, children }: PageLeadProps) {
  return (
    <header className={styles.lead}>
      <div>
        <h1 className={styles.title}>{title}</h1>
        <p className={styles.about}>{about}</p>
      </div>
      {children}
    </header>
  );
}
