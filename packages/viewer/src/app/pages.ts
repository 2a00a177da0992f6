import { type ComponentType, lazy } from 'react';

/** A page beside the bench, fetched when it is first opened. */
interface PageEntry {
  /** In the address, after `#`. */
  readonly id: string;
  readonly label: string;
  readonly Page: ComponentType;
}

/** The bench itself: always there, hidden while another page is open. */
export const BENCH = { id: 'bench', label: 'Bench' } as const;

/** The other pages, in the order of the bar. */
export const PAGES: readonly PageEntry[] = [
  {
    id: 'studies',
    label: 'Studies',
    Page: lazy(() => import('../studies/StudiesPage.tsx').then(({ StudiesPage }) => ({ default: StudiesPage }))),
  },
  {
    id: 'budget',
    label: 'Budget',
    Page: lazy(() => import('../budget/BudgetPage.tsx').then(({ BudgetPage }) => ({ default: BudgetPage }))),
  },
  {
    id: 'checks',
    label: 'Checks',
    Page: lazy(() => import('../checks/ChecksPage.tsx').then(({ ChecksPage }) => ({ default: ChecksPage }))),
  },
  {
    id: 'report',
    label: 'Report',
    Page: lazy(() => import('../report/ReportPage.tsx').then(({ ReportPage }) => ({ default: ReportPage }))),
  },
];

/** Page of an address; whatever else stands behind the `#` belongs to the bench. */
export function pageOf(hash: string): string {
  const id = hash.slice(1);
  return PAGES.some((page) => page.id === id) ? id : BENCH.id;
}
