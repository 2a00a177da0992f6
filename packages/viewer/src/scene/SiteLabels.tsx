import { shortMicrometres, signedMicrometres } from '../format/number.ts';
import type { Solved } from '../state/run-store.ts';
import { shownCase } from '../state/shown-case.ts';
import { useQuantity } from '../state/use-quantity.ts';
import { useEarlier, useRun, useView } from '../state/use-workbench.ts';
import { ContactLabels } from './ContactLabels.tsx';
import styles from './labels.module.css';
import { SiteNames } from './SiteNames.tsx';
import { useStageFrame } from './stage-frame.ts';

/** More labels than this are no help; the largest bows keep theirs. */
const MOST = 200;

/** Over the middle of each site its name, and what the colours show of it. */
export function SiteLabels() {
  const solved = useRun((run) => run.solved);
  const { quantity, contact } = useQuantity();
  if (solved === null) return null;
  const z = solved.model.body.thickness / 2;
  if (quantity === 'tension') return <SiteNames solved={solved} z={z} />;
  if (quantity === 'contact') return <ContactLabels solved={solved} contact={contact} z={z} />;
  return <BowLabels solved={solved} z={z} />;
}

/** Name and bow of each site. */
function BowLabels({ solved: { model, result }, z }: { solved: Solved; z: number }) {
  const stage = useStageFrame();
  const earlier = useEarlier();
  const caseName = useView((view) => view.caseName);
  const { sites, bow } = shownCase(result, caseName);
  const labelled = result.sites
    .map((site, i) => ({ site, value: sites[i]?.bow ?? 0 }))
    .sort((a, b) => (result.sites.length > MOST ? Math.abs(b.value) - Math.abs(a.value) : 0))
    .slice(0, MOST);
  const limit = model.limits.bow;
  return (
    <ul className={styles.layer} aria-label={`Bow of each site${earlier ? ', of the last good answer' : ''}`}>
      {labelled.map(({ site: { name, centre }, value }) => {
        const over = Math.abs(value) > limit;
        return (
          <li
            key={name}
            ref={(element) => {
              if (element === null) return;
              stage.labels.set(`site ${name}`, { element, kind: 'site', at: centre, z, weight: Math.abs(value) });
              stage.redraw();
              return () => {
                stage.labels.delete(`site ${name}`);
              };
            }}
            className={styles.site}
            data-testid={`site-${name}`}
            data-stale={earlier || undefined}
            data-over={over || undefined}
            data-worst={name === bow.site || undefined}
          >
            <span className={styles.name}>{name}</span>
            <span className={styles.bow}>{signedMicrometres(value)}</span>
            <span className={styles.brief} aria-hidden="true">
              {signedMicrometres(value).replace('+', '')}
            </span>
            <span className={styles.least} aria-hidden="true">
              {shortMicrometres(value, limit)}
            </span>
            <span className={styles.spoken}> micrometres{over ? ', over the limit' : ''}</span>
          </li>
        );
      })}
    </ul>
  );
}
