import type { NumberRows } from '../format/number-rows.ts';
import styles from './chart.module.css';
import { TableBody } from './TableBody.tsx';

interface ChartTableProps extends NumberRows {
  readonly title: string;
  readonly testId?: string;
  /** Unfolded at once. */
  readonly open?: boolean;
}

/** What a chart shows, in numbers, folded away until asked for. */
export function ChartTable({ title, columns, rows, testId, open = false }: ChartTableProps) {
  return (
    <details className={styles.fold} open={open || undefined}>
      <summary>As a table</summary>
      <div className={styles.scroll}>
        <table className={styles.table} data-testid={testId}>
          <caption>{title}</caption>
          <TableBody columns={columns} rows={rows} />
        </table>
      </div>
    </details>
  );
}
