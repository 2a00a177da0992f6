import type { HeadModel, HeadResult } from '@flathead/solver';
import { useMemo, useState } from 'react';
import { rowSection, sectionProfile, siteExtents } from '../buffers/section-profile.ts';
import { PlanMap } from '../charts/PlanMap.tsx';
import { SectionChart } from '../charts/SectionChart.tsx';
import { CRITERION_NAMES } from '../format/criterion-text.ts';
import { fieldText } from '../format/number.ts';
import { shownCase } from '../state/shown-case.ts';
import { CriteriaTable } from './CriteriaTable.tsx';
import styles from './compare.module.css';
import { largestDifference, planWidth } from './difference-field.ts';
import { LinkedMaps } from './LinkedMaps.tsx';
import { SignedLegend } from './SignedLegend.tsx';
import { Waterfall } from './Waterfall.tsx';

interface SolvedHead {
  readonly model: HeadModel;
  readonly result: HeadResult;
}

/** Width of the wider head on the page, px. */
const MAP_WIDTH = 300;

/** Two solved heads: maps on one scale and moved together, their difference, a section, criteria, and a waterfall. */
export function Comparison({ reference, other }: { reference: SolvedHead; other: SolvedHead }) {
  const names = [reference.model.name, other.model.name] as const;
  const cases = other.result.cases.filter(({ name }) => reference.result.cases.some((own) => own.name === name));
  const [chosen, setChosen] = useState<string | null>(null);
  const caseName = (cases.find(({ name }) => name === chosen) ?? cases[0])?.name ?? null;
  const limit = other.model.limits.bow;
  const { a, b, top, widths } = useMemo(() => {
    // One colour scale: that of the head compared.
    const a = { ...reference, model: withBowLimit(reference.model, limit), caseName };
    const b = { ...other, caseName };
    const wide = [planWidth(a), planWidth(b)];
    const widths = wide.map((width) => Math.round((MAP_WIDTH * width) / Math.max(...wide)));
    return { a, b, top: largestDifference(b, a), widths };
  }, [reference, other, limit, caseName]);
  const site = shownCase(other.result, caseName).bow.site;
  const profiles = useMemo(() => {
    const line = rowSection(other.result.mesh, other.result.sites, site);
    const of = ({ result }: SolvedHead) => sectionProfile(result.mesh, shownCase(result, caseName).deviation, line);
    return { line, both: [of(other), of(reference)] };
  }, [reference, other, caseName, site]);
  const judged = other.result.verdict.criteria.filter(
    ({ criterion }) =>
      criterion !== 'failureProbability' &&
      reference.result.verdict.criteria.some((own) => own.criterion === criterion),
  );
  const [kind, setKind] = useState<string>('bow');
  const criterion = judged.find((verdict) => verdict.criterion === kind) ?? judged[0];
  return (
    <div className={styles.body}>
      {cases.length > 1 && (
        <label className={styles.choice}>
          Load case
          <select value={caseName ?? ''} onChange={(event) => setChosen(event.currentTarget.value)}>
            {cases.map(({ name }) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </label>
      )}
      <LinkedMaps
        maps={[
          { title: names[0], map: <PlanMap head={a} width={widths[0]} pixelRatio={3} label={`Bow of ${names[0]}`} /> },
          { title: names[1], map: <PlanMap head={b} width={widths[1]} pixelRatio={3} label={`Bow of ${names[1]}`} /> },
          {
            title: (
              <>
                Difference <SignedLegend top={top} />
              </>
            ),
            map: (
              <PlanMap
                head={b}
                less={{ head: a, top }}
                width={widths[1]}
                pixelRatio={3}
                detail="outlines"
                label={`Bow of ${names[1]} less that of ${names[0]}`}
              />
            ),
          },
        ]}
      />
      <p className={styles.note}>
        Both maps in the colours of one limit, {fieldText(limit * 1000)} µm; hatched beyond. The difference is{' '}
        {names[1]} less {names[0]}, away from the board positive.
      </p>
      <h3 className={styles.subtitle}>Criteria</h3>
      <CriteriaTable names={names} verdicts={[reference.result.verdict, other.result.verdict]} />
      <h3 className={styles.subtitle}>Along the row of site {site}</h3>
      <SectionChart
        title={`Deviation along the row of site ${site}`}
        limit={limit * 1000}
        sites={siteExtents(other.result.sites, profiles.line)}
        profiles={[
          { label: names[1], ...profiles.both[0] },
          { label: names[0], ...profiles.both[1] },
        ]}
      />
      {criterion && (
        <>
          <h3 className={styles.subtitle}>
            What each change contributes
            {judged.length > 1 && (
              <select
                aria-label="Criterion"
                value={criterion.criterion}
                onChange={(event) => setKind(event.currentTarget.value)}
              >
                {judged.map((verdict) => (
                  <option key={verdict.criterion} value={verdict.criterion}>
                    {CRITERION_NAMES[verdict.criterion]}
                  </option>
                ))}
              </select>
            )}
          </h3>
          <Waterfall from={reference.model} to={other.model} criterion={criterion} />
        </>
      )}
    </div>
  );
}

function withBowLimit(model: HeadModel, bow: number): HeadModel {
  return { ...model, limits: { ...model.limits, bow } };
}
