import type { HeadModel, HeadResult } from '@flathead/solver';
import { useMemo, useState } from 'react';
import { limitScale } from '../buffers/colour-scale.ts';
import { rowSection, sectionProfile, siteExtents } from '../buffers/section-profile.ts';
import { Legend } from '../charts/Legend.tsx';
import { PlanMap } from '../charts/PlanMap.tsx';
import { SectionChart } from '../charts/SectionChart.tsx';
import { CRITERION_NAMES } from '../format/criterion-text.ts';
import { fieldText } from '../format/number.ts';
import { largestBow } from '../state/largest-bow.ts';
import { sameOutlines } from '../state/same-outlines.ts';
import { shownCase } from '../state/shown-case.ts';
import { ChangedInputs } from './ChangedInputs.tsx';
import { CriteriaTable } from './CriteriaTable.tsx';
import styles from './compare.module.css';
import { largestDifference, windowOf } from './difference-field.ts';
import { LinkedMaps } from './LinkedMaps.tsx';
import { SignedLegend } from './SignedLegend.tsx';
import { SitesCompared } from './SitesCompared.tsx';
import { Waterfall } from './Waterfall.tsx';

interface SolvedHead {
  readonly model: HeadModel;
  readonly result: HeadResult;
}

/** Of a map on the page, px. */
const MAP_WIDTH = 300;

/** Two solved heads: what differs, sites, maps on one scale and moved together, criteria, a section, and a waterfall. */
export function Comparison({ reference, other }: { reference: SolvedHead; other: SolvedHead }) {
  const names = [reference.model.name, other.model.name] as const;
  const cases = other.result.cases.filter(({ name }) => reference.result.cases.some((own) => own.name === name));
  const [chosen, setChosen] = useState<string | null>(null);
  const caseName = (cases.find(({ name }) => name === chosen) ?? cases[0])?.name ?? null;
  const limit = other.model.limits.bow;
  const { a, b, top, window, largest } = useMemo(() => {
    // One colour scale: that of the head compared.
    const a = { ...reference, model: withBowLimit(reference.model, limit), caseName };
    const b = { ...other, caseName };
    return {
      a,
      b,
      top: largestDifference(b, a),
      window: windowOf([a, b]),
      largest: Math.max(largestBow(reference.result), largestBow(other.result)),
    };
  }, [reference, other, limit, caseName]);
  const drawn = { window, largest, width: MAP_WIDTH, pixelRatio: 3 };
  const alike = sameOutlines(reference.model, other.model);
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
      <div className={styles.pair}>
        <section>
          <h3 className={styles.subtitle}>What differs</h3>
          <ChangedInputs from={reference.model} to={other.model} />
        </section>
        <section>
          <h3 className={styles.subtitle}>Sites</h3>
          <SitesCompared names={names} results={[reference.result, other.result]} caseName={caseName} limit={limit} />
        </section>
      </div>
      <LinkedMaps
        maps={[
          { title: names[0], map: <PlanMap head={a} {...drawn} label={`Bow of ${names[0]}`} /> },
          { title: names[1], map: <PlanMap head={b} {...drawn} label={`Bow of ${names[1]}`} /> },
          {
            title: 'Difference',
            map: (
              <PlanMap
                head={b}
                less={{ head: a, top }}
                {...drawn}
                detail="outlines"
                label={`Bow of ${names[1]} less that of ${names[0]}`}
              />
            ),
          },
        ]}
      />
      <div className={styles.meaning}>
        <Legend scale={limitScale(limit, largest)} caption="Bow, µm" unit="µm" factor={1000} />
        <SignedLegend top={top} />
        <p className={styles.note} data-testid="comparison-scale">
          Both maps at one scale of length and in the same colours; hatched beyond the limit of{' '}
          {fieldText(limit * 1000)} µm
          {reference.model.limits.bow === limit
            ? ''
            : `, that of ${names[1]} (${names[0]} has ${fieldText(reference.model.limits.bow * 1000)} µm)`}
          . The difference is {names[1]} less {names[0]}, away from the board positive.
          {alike
            ? ''
            : ` The two heads have other outlines: the difference is drawn only where both are, laid on each other by their own x and y; dashed the outline of ${names[0]}.`}
        </p>
      </div>
      <div className={styles.pair}>
        <section>
          <h3 className={styles.subtitle}>Criteria</h3>
          <div className={styles.wide}>
            <CriteriaTable names={names} verdicts={[reference.result.verdict, other.result.verdict]} />
          </div>
        </section>
        <section>
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
        </section>
      </div>
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
