import { useMemo } from 'react';
import { Icon } from '../app/icons.tsx';
import { sectionProfile, siteExtents } from '../buffers/section-profile.ts';
import { SectionChart } from '../charts/SectionChart.tsx';
import { axisOf, beginSectionMove, sectionLine } from '../state/section-line.ts';
import { shownCase } from '../state/shown-case.ts';
import { usePointer, useRun, useView, useWorkbench } from '../state/use-workbench.ts';
import { CardField } from './CardField.tsx';
import styles from './section-drawer.module.css';

const ENDS = [
  { part: 'from', label: 'from x, y' },
  { part: 'to', label: 'to x, y' },
] as const;

/** Height of the chart, and of what stands over and under it, px. */
const CHART = { least: 92, most: 168, around: 58 };

/**
 * Under the stage: the deviation along the section line, of the answer shown and of the one before an edit.
 *
 * @param room what the stage can spare, px; the chart is as high as that allows
 */
export function SectionDrawer({ room }: { room: number }) {
  const workbench = useWorkbench();
  const { view } = workbench;
  const open = useView((state) => state.sectionOpen);
  const caseName = useView((state) => state.caseName);
  const chosen = useView((state) => state.section);
  const typed = usePointer((pointer) => pointer.typed);
  const typedOn = usePointer(({ selected }) => (selected?.startsWith('section ') ? selected.slice(8) : null));
  const solved = useRun((run) => run.solved);
  const full = useRun((run) => run.full);
  const drawn = useMemo(() => {
    if (!open || solved === null) return null;
    const line = sectionLine(solved.result, caseName, chosen);
    const shown = shownCase(solved.result, caseName);
    const before = full !== null && full.model !== solved.model ? full.result : null;
    const profiles = [
      { label: shown.name, ...sectionProfile(solved.result.mesh, shown.deviation, line) },
      ...(before
        ? [
            {
              label: 'before the edit',
              ...sectionProfile(before.mesh, shownCase(before, shown.name).deviation, line),
            },
          ]
        : []),
    ];
    return {
      line,
      profiles,
      sites: siteExtents(solved.result.sites, line),
      limit: solved.model.limits.bow * 1000,
      worst: shown.bow.site,
    };
  }, [open, solved, full, caseName, chosen]);
  if (drawn === null) return null;
  const { line, profiles, sites, limit, worst } = drawn;
  const height = Math.round(Math.min(CHART.most, Math.max(CHART.least, room - CHART.around)));
  return (
    <section
      className={styles.drawer}
      style={{ maxHeight: Math.max(room, height + CHART.around) }}
      aria-label="Section"
      data-testid="section-drawer"
    >
      <header className={styles.head}>
        <h2 className={styles.title} title="Deviation from the plane of the fasteners">
          Section
        </h2>
        {ENDS.map(({ part, label }) => (
          <CardField
            key={`${part} ${typedOn === part ? typed : null}`}
            typed={typedOn === part ? typed : null}
            label={label}
            name={`Section ${part}, x and y`}
            testId={`section-field-${part}`}
            values={line[part].map((value) => Math.round(value * 1000) / 1000)}
            take={([x, y]) => {
              beginSectionMove(workbench, part).to([x, y], 0);
              return null;
            }}
          />
        ))}
        <button
          type="button"
          className={styles.button}
          disabled={chosen === null}
          data-testid="section-row"
          onClick={() => view.setState({ section: null })}
        >
          Row of the worst site, {worst}
        </button>
        <button
          type="button"
          className={styles.close}
          aria-label="Close the section"
          onClick={() => view.setState({ sectionOpen: false })}
        >
          <Icon name="cross" size={13} />
        </button>
      </header>
      <SectionChart
        profiles={profiles}
        limit={limit}
        sites={sites}
        axis={axisOf(line)}
        title="Deviation along the section"
        height={height}
      />
    </section>
  );
}
