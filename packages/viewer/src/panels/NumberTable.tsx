import { TableBody } from '../charts/TableBody.tsx';
import styles from './numbers.module.css';

interface NumberTableProps {
  readonly title: string;
  readonly testId: string;
  /** Heads of the columns, that of the names first. */
  readonly columns: readonly string[];
  /** Cells of each row, its name first. */
  readonly rows: readonly (readonly string[])[];
  /** Under the title. */
  readonly note?: string | undefined;
  /** Of an answer before the one shown. */
  readonly stale?: boolean | undefined;
}

/** A table of results: names on the left, numbers to the right. */
export function NumberTable({ title, testId, columns, rows, note, stale = false }: NumberTableProps) {
  return (
    <table className={styles.table} data-testid={testId} data-stale={stale || undefined}>
      <caption className={styles.caption}>
        {title}
        {note !== undefined && <span className={styles.note}> {note}</span>}
      </caption>
      <TableBody columns={columns} rows={rows} />
    </table>
  );
}
