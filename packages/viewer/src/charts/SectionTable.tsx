import type { SectionProfile, SiteExtent } from '../buffers/section-profile.ts';
import { fieldText } from '../format/number.ts';
import { sectionRows } from '../format/section-rows.ts';
import chart from './chart.module.css';
import styles from './section-chart.module.css';
import { TableBody } from './TableBody.tsx';

interface SectionTableProps {
  readonly profiles: readonly (SectionProfile & { readonly label: string })[];
  /** um */
  readonly limit: number;
  readonly sites: readonly SiteExtent[];
  readonly title: string;
}

/** The section in numbers, folded away until asked for; left out of print. */
export function SectionTable({ profiles, limit, sites, title }: SectionTableProps) {
  const { columns, rows } = sectionRows(profiles, sites);
  return (
    <details className={styles.fold}>
      <summary>As a table</summary>
      <table className={chart.table} data-testid="section-table">
        <caption>
          {title}, limit {fieldText(limit)} µm
        </caption>
        <TableBody columns={columns} rows={rows} />
      </table>
    </details>
  );
}
