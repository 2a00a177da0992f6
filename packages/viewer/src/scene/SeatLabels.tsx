import { seatHeight } from '../buffers/seat-height.ts';
import { forceDigits } from '../format/number.ts';
import { seatPlace } from '../state/seat-place.ts';
import { shownCase } from '../state/shown-case.ts';
import { useEarlier, useModel, useRun, useView } from '../state/use-workbench.ts';
import styles from './labels.module.css';
import { useStageFrame } from './stage-frame.ts';
import { Tag } from './Tag.tsx';

/** Name of each seat, and what it carries in the case shown. */
export function SeatLabels() {
  const stage = useStageFrame();
  const model = useModel((model) => model);
  const caseName = useView((view) => view.caseName);
  const results = useRun(({ solved }) => (solved ? shownCase(solved.result, caseName).seats : undefined));
  const earlier = useEarlier();
  const { seats = [] } = model;
  if (seats.length === 0) return null;
  return (
    <ul className={styles.layer} aria-label={`Seats${earlier ? ', forces of the last good answer' : ''}`}>
      {seats.map((seat, i) => {
        const { name } = seat;
        const { at } = seatPlace(seat);
        const result = results?.find((other) => other.name === name);
        return (
          <li
            // biome-ignore lint/suspicious/noArrayIndexKey: a seat is its place in the list; names may repeat while typed
            key={i}
            ref={(element) => {
              if (element === null) return;
              stage.labels.set(`seat ${i}`, { element, kind: 'seat', at, z: seatHeight(model, at), weight: 0 });
              stage.redraw();
              return () => {
                stage.labels.delete(`seat ${i}`);
              };
            }}
            className={styles.seat}
          >
            <Tag of={`seat ${i}`} weight={Math.abs(result?.force ?? 0)} stale={earlier && result !== undefined}>
              {name}
              {result && (
                <span className={styles.force}>
                  {result.force === 0 ? ' not touching' : ` ${forceDigits(result.force)} N`}
                </span>
              )}
            </Tag>
          </li>
        );
      })}
    </ul>
  );
}
