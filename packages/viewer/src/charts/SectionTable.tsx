import type { SectionProfile, SiteExtent } from '../buffers/section-profile.ts';
import { fieldText } from '../format/number.ts';
import { sectionRows } from '../format/section-rows.ts';
import styles from './section-chart.module.css';

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
      <table className={styles.table} data-testid="section-table">
        <caption>
          {title}, limit {fieldText(limit)} µm
        </caption>
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
          {rows.map(([where, ...cells]) => (
            <tr key={where}>
              <th scope="row">{where}</th>
              {cells.map((cell, i) => (
                <td key={columns[i + 1]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
