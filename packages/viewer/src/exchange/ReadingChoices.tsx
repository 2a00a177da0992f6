import { type FileKind, fileRoles, sheetNames } from '@flathead/solver/exchange';
import { useMemo } from 'react';
import { typeset } from '../format/number.ts';
import { ChoiceRow } from '../panels/ChoiceRow.tsx';
import styles from './exchange.module.css';
import { type Choices, FIRST_CHOICES, readAs } from './readings.ts';

const KINDS: { readonly value: FileKind; readonly label: string }[] = [
  { value: 'probes', label: 'Probe list' },
  { value: 'outline', label: 'Drawing (DXF, SVG)' },
  { value: 'heights', label: 'Heights of the board' },
  { value: 'fasteners', label: 'Fastener list' },
];
const UNITS = [
  { value: '', label: 'as the file says' },
  ...['mm', 'um', 'mil', 'inch'].map((value) => ({ value, label: typeset(value) })),
];
const ROLES: Readonly<Record<string, string>> = {
  points: 'Point loads, one a probe',
  field: 'Even fields',
  auto: 'What its layers say',
  outline: 'Outline of the body',
};

interface ReadingChoicesProps {
  /** `null` before a file is chosen. */
  readonly content: Uint8Array | null;
  readonly choices: Choices;
  choose(change: Partial<Choices>): void;
}

/** How a file is read and taken: as what, which sheet or layers of it, in which unit. */
export function ReadingChoices({ content, choices, choose }: ReadingChoicesProps) {
  const isDrawing = choices.kind === 'outline';
  const roles = fileRoles(choices.kind);
  const sheets = useMemo(() => (content === null ? [] : sheetsOf(content)), [content]);
  const shown = sheets.find(({ isShown }) => isShown) ?? sheets[0];
  return (
    <>
      <ChoiceRow
        label="It is a"
        testId="import-kind"
        value={choices.kind}
        options={KINDS}
        choose={(kind) => choose({ kind, as: '', layers: [] })}
      />
      {sheets.length > 1 && !isDrawing && (
        <ChoiceRow
          label="Sheet"
          testId="import-sheet"
          value={choices.sheet === '' ? shown.name : choices.sheet}
          options={sheets.map(({ name, isShown }) => ({ value: name, label: isShown ? name : `${name} (hidden)` }))}
          choose={(sheet) => choose({ sheet })}
        />
      )}
      <ChoiceRow
        label="Lengths in"
        testId="import-units"
        value={choices.units}
        options={UNITS}
        choose={(units) => choose({ units })}
      />
      {roles.length > 0 && (
        <ChoiceRow
          label="Take as"
          testId="import-as"
          value={choices.as === '' ? roles[0] : choices.as}
          options={roles.map((value) => ({ value, label: ROLES[value] ?? value[0].toUpperCase() + value.slice(1) }))}
          choose={(as) => choose({ as })}
        />
      )}
      {isDrawing && <DrawingChoices content={content} choices={choices} choose={choose} />}
    </>
  );
}

function DrawingChoices({ content, choices, choose }: ReadingChoicesProps) {
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

/** Sheets of a workbook; none of a file that is no workbook, or a damaged one, which the reading says. */
function sheetsOf(content: Uint8Array) {
  try {
    return sheetNames(content);
  } catch {
    return [];
  }
}

/** Every layer of a drawing, whichever are chosen. */
function layersOf(content: Uint8Array): readonly string[] {
  try {
    return readAs(content, { ...FIRST_CHOICES, kind: 'outline' }).preview.layers.map(({ name }) => name);
  } catch {
    return [];
  }
}
