import type { NumberRows } from '../format/number-rows.ts';
import { ReportTable } from './ReportTable.tsx';

/** The verification book in figures, in two columns. */
export function BookTable({ columns, rows }: NumberRows) {
  return (
    <section className="report-book">
      <h3>
        The verification book{' '}
        <small>cases by what their number rests on; within: of those run here, on this visit</small>
      </h3>
      <div className="report-halves">
        {halves(rows).map((half) => (
          <ReportTable key={half[0]?.[0]} title="" columns={columns} rows={half} />
        ))}
      </div>
    </section>
  );
}

function halves<T>(rows: readonly T[]): T[][] {
  const middle = Math.ceil(rows.length / 2);
  return [rows.slice(0, middle), rows.slice(middle)];
}
