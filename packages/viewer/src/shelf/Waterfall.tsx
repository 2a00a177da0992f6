import type { CriterionVerdict, HeadModel } from '@flathead/solver';
import { Icon } from '../app/icons.tsx';
import { CRITERION_NAMES, criterionUnit } from '../format/criterion-text.ts';
import styles from './compare.module.css';
import { useWaterfall } from './use-waterfall.ts';
import { WaterfallChart } from './WaterfallChart.tsx';

/** What each change between two heads contributes to a criterion, in an order of choice. */
export function Waterfall({ from, to, criterion }: { from: HeadModel; to: HeadModel; criterion: CriterionVerdict }) {
  const kind = criterion.criterion;
  const scale = criterion.unit === 'mm' ? 1000 : kind === 'fasteners' ? 100 : 1;
  const fall = useWaterfall(from, to, kind, scale);
  const { ordered, falls, decimals, solved, total, stopped } = fall;
  if (ordered.length === 0) return <p className={styles.note}>The two heads are the same but for their names.</p>;
  return (
    <>
      {solved < total && (
        <p className={styles.progress} role="status">
          <progress value={solved} max={total} aria-label="Heads solved" />
          {solved} of {total} heads in between solved
          <button type="button" className={styles.act} onClick={() => fall.setStopped(!stopped)}>
            {stopped ? 'Go on' : 'Stop'}
          </button>
        </p>
      )}
      {falls.length > 0 && (
        <WaterfallChart
          falls={falls}
          decimals={decimals}
          names={[from.name, to.name]}
          limit={criterion.limit * scale}
          unit={criterionUnit(criterion)}
        />
      )}
      {ordered.length > 1 && (
        <>
          <p className={styles.note}>
            {CRITERION_NAMES[kind]} as the changes are made one after the other. What a change gains depends on those
            made before it, so the order matters; choose it here. Heads without an answer count with the next change.
          </p>
          <ol className={styles.order}>
            {ordered.map(({ id, words }, i) => (
              <li key={id} data-testid="waterfall-order">
                <button
                  type="button"
                  className={styles.small}
                  disabled={i === 0}
                  aria-label={`Make earlier: ${words}`}
                  onClick={() => fall.move(id, -1)}
                >
                  <Icon name="up" size={13} />
                </button>
                <button
                  type="button"
                  className={styles.small}
                  disabled={i === ordered.length - 1}
                  aria-label={`Make later: ${words}`}
                  onClick={() => fall.move(id, 1)}
                >
                  <Icon name="down" size={13} />
                </button>
                {words}
              </li>
            ))}
          </ol>
        </>
      )}
    </>
  );
}
