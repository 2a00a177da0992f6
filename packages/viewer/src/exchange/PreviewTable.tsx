import type { Preview } from '@flathead/solver/exchange';
import { fieldText, typeset } from '../format/number.ts';
import styles from './exchange.module.css';

/** Left-out lines that are listed. */
const MOST_LISTED = 200;

const BASES = { file: 'as the file says', given: 'as chosen', guessed: 'a guess: check it' };

/** What a reader made of a file, and each thing that it left out. */
export function PreviewTable({ preview: { counts, extents, layers, units, guesses, dropped } }: { preview: Preview }) {
  const told = Object.entries(counts).filter(([kind, count]) => count > 0 && kind !== 'dropped');
  const range = (axis: 0 | 1): string =>
    extents === null ? '' : `${fieldText(extents.min[axis])} to ${fieldText(extents.max[axis])} mm`;
  return (
    <>
      <dl className={styles.facts} data-testid="import-preview">
        <dt>Read</dt>
        <dd>
          {told.map(([kind, count]) => `${count} ${count === 1 ? kind.replace(/s$/, '') : kind}`).join(', ') ||
            'nothing'}
        </dd>
        {extents && (
          <>
            <dt>Box</dt>
            <dd>
              x {range(0)}, y {range(1)}
            </dd>
          </>
        )}
        <dt>Lengths</dt>
        <dd>
          {typeset(units.length)}, {BASES[units.basis]}
        </dd>
        {layers.map(({ name, entities }) => (
          <div key={name} className={styles.pair}>
            <dt>Layer {name}</dt>
            <dd>
              {Object.entries(entities)
                .map(([kind, count]) => `${count} ${kind}`)
                .join(', ')}
            </dd>
          </div>
        ))}
      </dl>
      {guesses.map((guess) => (
        <p key={guess}>{typeset(guess)}</p>
      ))}
      {dropped.length > 0 && (
        <>
          <h3 className={styles.left}>Left out: {dropped.length}</h3>
          <ul className={styles.dropped} data-testid="import-dropped">
            {dropped.slice(0, MOST_LISTED).map(({ line, reason }) => (
              <li key={`${line} ${reason}`}>
                {line > 0 && <b>Line {line}: </b>}
                {typeset(reason)}
              </li>
            ))}
            {dropped.length > MOST_LISTED && <li>and {dropped.length - MOST_LISTED} more</li>}
          </ul>
        </>
      )}
    </>
  );
}
