import type { NumberRows } from '../format/number-rows.ts';
import styles from './chart.module.css';

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
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, ...cells], r) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place
              <tr key={r}>
                <th scope="row">{name}</th>
                {cells.map((cell, i) => (
                  <td key={columns[i + 1]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
