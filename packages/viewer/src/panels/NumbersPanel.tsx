import { Icon } from '../app/icons.tsx';
import { caseLine, fastenerRows, partRows, seatRows, siteRows } from '../format/number-rows.ts';
import { shownCase } from '../state/shown-case.ts';
import { shownTension } from '../state/shown-tension.ts';
import { useRun, useView, useWorkbench } from '../state/use-workbench.ts';
import { NumberTable } from './NumberTable.tsx';
import styles from './numbers.module.css';
import section from './section.module.css';

/** Everything measured on the case shown, in tables. */
export function NumbersPanel() {
  const { view } = useWorkbench();
  const open = useView((state) => state.numbers);
  const caseName = useView((state) => state.caseName);
  const solved = useRun((run) => run.solved);
  const full = useRun((run) => run.full);
  if (!open || solved === null) return null;
  const shown = shownCase(solved.result, caseName);
  const stress = shownTension({ solved, full }, shown);
  const sites = siteRows(shown.sites);
  const left = shown.sites.length - sites.rows.length;
  return (
    <section className={styles.panel} aria-label="Numbers of the case shown" data-testid="numbers-panel">
      <header className={styles.head}>
        <h2 className={styles.title}>{shown.name}</h2>
        <span className={styles.case}>{caseLine(shown)}</span>
        <button
          type="button"
          className={section.remove}
          aria-label="Close the numbers"
          onClick={() => view.setState({ numbers: false })}
        >
          <Icon name="cross" size={13} />
        </button>
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: scrolls, so the keyboard must reach it */}
      <section className={styles.body} aria-label="Tables" tabIndex={0}>
        <NumberTable title="Fasteners" testId="numbers-fasteners" {...fastenerRows(shown.fasteners)} />
        {shown.seats.length > 0 && <NumberTable title="Seats" testId="numbers-seats" {...seatRows(shown.seats)} />}
        {stress ? (
          <NumberTable
            title="Strength"
            testId="numbers-parts"
            note={stress.stale ? 'of the last full answer' : undefined}
            stale={stress.stale}
            {...partRows(stress.parts)}
          />
        ) : (
          <p className={styles.note}>Stress follows with the full answer.</p>
        )}
        <NumberTable
          title="Sites"
          testId="numbers-sites"
          note={left > 0 ? `largest bows; ${left} more are left out` : undefined}
          {...sites}
        />
      </section>
    </section>
  );
}
