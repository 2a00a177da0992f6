import type { HeadModel, HeadResult } from '@flathead/solver';
import { useMemo } from 'react';
import { rowSection, sectionProfile, siteExtents } from '../buffers/section-profile.ts';
import { SectionChart } from '../charts/SectionChart.tsx';
import { shownCase } from '../state/shown-case.ts';
import { worstOfEach } from './case-columns.ts';

const WIDTH = 668;
const HEIGHT = 190;
/** As many as the chart has strokes for. */
const MOST_CASES = 4;

/** Section through the row of the worst site: the worst case, and others beside it. */
export function ReportSection({ model, result }: { model: HeadModel; result: HeadResult }) {
  const { mesh, sites, cases } = result;
  const worst = shownCase(result, null);
  const { profiles, extents } = useMemo(() => {
    const line = rowSection(mesh, sites, worst.bow.site);
    const others = worstOfEach(cases).filter(({ name }) => name !== worst.name);
    return {
      profiles: [worst, ...others]
        .slice(0, MOST_CASES)
        .map(({ name, deviation }) => ({ label: name, ...sectionProfile(mesh, deviation, line) })),
      extents: siteExtents(sites, line),
    };
  }, [mesh, sites, cases, worst]);
  const title = `Section along the row of site ${worst.bow.site}`;
  return (
    <div className="report-section">
      <h3>{title}: deviation from the fastener plane</h3>
      <SectionChart
        profiles={profiles}
        limit={model.limits.bow * 1000}
        sites={extents}
        title={title}
        width={WIDTH}
        height={HEIGHT}
      />
    </div>
  );
}
