import { stressDigits } from '../format/number.ts';
import type { Solved } from '../state/run-store.ts';
import { useQuantity } from '../state/use-quantity.ts';
import styles from './labels.module.css';
import { useStageFrame } from './stage-frame.ts';
import { Tag } from './Tag.tsx';

/** Under the tension: the name of each site, and the largest stress of the body where it is. @param z of its face, mm */
export function SiteNames({ solved, z }: { solved: Solved; z: number }) {
  const stage = useStageFrame();
  const { tension } = useQuantity();
  const body = tension?.parts.find(({ part }) => part === 'body');
  const follow =
    (key: string, kind: 'site' | 'peak', at: readonly [number, number]) => (element: HTMLElement | null) => {
      if (element === null) return;
      stage.labels.set(key, { element, kind, at, z, weight: 0 });
      stage.redraw();
      return () => {
        stage.labels.delete(key);
      };
    };
  return (
    <ul className={styles.layer} aria-label="Sites and largest stress">
      {solved.result.sites.map(({ name, centre }) => (
        <li key={name} ref={follow(`site ${name}`, 'site', centre)} className={styles.siteName}>
          {name}
        </li>
      ))}
      {body && (
        <li
          key={`peak ${body.at.join()}`}
          ref={follow('peak', 'peak', body.at)}
          className={styles.peak}
          data-testid="peak-stress"
          data-stale={tension?.stale || undefined}
        >
          <Tag of="peak" weight={Number.POSITIVE_INFINITY} kept className={styles.peakText}>
            largest {stressDigits(body.stress)} MPa{body.measure === 'principal' ? '' : ' von Mises'}, {body.face} side
          </Tag>
        </li>
      )}
    </ul>
  );
}
