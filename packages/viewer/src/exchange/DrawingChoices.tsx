import { useMemo } from 'react';
import styles from './exchange.module.css';
import { LengthRow } from './LengthRow.tsx';
import type { ReadingChoicesProps } from './reading-choices.ts';
import { FIRST_CHOICES, readAs } from './readings.ts';

/** Of a drawing: which layers, where its middle goes, which gaps are closed and how near its chords keep to curves. */
export function DrawingChoices({ content, choices, choose }: ReadingChoicesProps) {
  const layers = useMemo(() => (content === null ? [] : layersOf(content)), [content]);
  return (
    <>
      <label className={styles.tick}>
        <input
          type="checkbox"
          checked={choices.centre}
          onChange={(event) => choose({ centre: event.currentTarget.checked })}
        />
        Move its middle to the origin
      </label>
      <LengthRow
        label="Close gaps up to"
        testId="import-gap"
        value={choices.gap}
        empty="0.01 mm"
        choose={(gap) => choose({ gap })}
      />
      <LengthRow
        label="Chords off curves by"
        testId="import-tolerance"
        value={choices.tolerance}
        empty="0.002 mm"
        choose={(tolerance) => choose({ tolerance })}
      />
      {layers.length > 1 && (
        <fieldset className={styles.layers}>
          <legend>Layers, all if none is chosen</legend>
          {layers.map((name) => (
            <label key={name} className={styles.tick}>
              <input
                type="checkbox"
                data-testid={`layer-${name}`}
                checked={choices.layers.includes(name)}
                onChange={({ currentTarget: { checked } }) =>
                  choose({
                    layers: checked ? [...choices.layers, name] : choices.layers.filter((other) => other !== name),
                  })
                }
              />
              {name}
            </label>
          ))}
        </fieldset>
      )}
    </>
  );
}

/** Every layer of a drawing, whichever are chosen. */
function layersOf(content: Uint8Array): readonly string[] {
  try {
    return readAs(content, { ...FIRST_CHOICES, kind: 'outline' }).preview.layers.map(({ name }) => name);
  } catch {
    return [];
  }
}
