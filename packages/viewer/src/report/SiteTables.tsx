import type { HeadResult } from '@flathead/solver';
import { ReportTable } from './ReportTable.tsx';
import { bowRows, contactRows, siteRows } from './site-rows.ts';

/** Bow and contact force of every site; in one table where there is room for both. */
export function SiteTables({ result }: { result: HeadResult }) {
  const sites = siteRows(result);
  if (sites)
    return (
      <ReportTable
        title="Bow, µm, and contact force of one probe"
        note="bow from the fastener plane, away from the board positive; contact in the worst case"
        testId="report-sites"
        {...sites}
      />
    );
  const bows = bowRows(result);
  const contact = contactRows(result);
  return (
    <>
      {bows.tables.map((rows) => (
        <ReportTable
          key={rows.columns.join()}
          title="Bow, µm"
          note={
            bows.left > 0
              ? `largest bows; ${bows.left} sites are left out`
              : 'from the fastener plane, away from the board positive'
          }
          testId="report-sites"
          {...rows}
        />
      ))}
      {contact && (
        <ReportTable title="Contact force" note="of one probe, in the worst case of each site" words {...contact} />
      )}
    </>
  );
}
