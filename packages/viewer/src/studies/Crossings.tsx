import type { Crossing, Setting } from '@flathead/solver';
import page from '../app/page.module.css';
import { crossingSettings, crossingWords } from './crossing-words.ts';
import type { StudyParameter } from './parameters.ts';
import styles from './studies.module.css';

interface CrossingsProps {
  readonly crossings: readonly Crossing[];
  readonly axes: readonly StudyParameter[];
  onOpen(settings: readonly Setting[]): void;
}

/** The values that just pass, each to be taken over as a head. */
export function Crossings({ crossings, axes, onOpen }: CrossingsProps) {
  return (
    <ul className={styles.crossings} data-testid="crossings">
      {crossings.map((crossing) => {
        const words = crossingWords(crossing, axes);
        return (
          <li key={words}>
            {words}{' '}
            <button
              type="button"
              className={page.button}
              data-testid="take-crossing"
              onClick={() => onOpen(crossingSettings(crossing, axes))}
            >
              Open as variant
            </button>
          </li>
        );
      })}
    </ul>
  );
}
