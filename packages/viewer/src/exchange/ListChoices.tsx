import { type FileKind, type ListedColumn, listedColumns } from '@flathead/solver/exchange';
import { useMemo } from 'react';
import { ChoiceRow } from '../panels/ChoiceRow.tsx';
import styles from './exchange.module.css';
import { LengthRow } from './LengthRow.tsx';
import type { ReadingChoicesProps } from './reading-choices.ts';
import { FORCE_UNITS, FOUND_OUT, LENGTH_UNITS } from './unit-options.ts';

/** Columns of each kind of list, as its reader names them, and as they are told. */
const COLUMNS: Readonly<Record<FileKind, readonly (readonly [key: string, label: string])[]>> = {
  probes: [
    ['force', 'Force'],
    ['x', 'x'],
    ['y', 'y'],
    ['site', 'Site'],
  ],
  heights: [
    ['x', 'x'],
    ['y', 'y'],
    ['z', 'Height'],
  ],
  fasteners: [
    ['name', 'Name'],
    ['x', 'x'],
    ['y', 'y'],
    ['screw', 'Screw'],
    ['z', 'Height'],
  ],
  outline: [],
};

/** Which column of a list is what, in which units, and what parts the sites of its probes. */
export function ListChoices({ content, choices, choose }: ReadingChoicesProps) {
  const { kind, sheet, columns, forceUnits, heightUnits, gap } = choices;
  const listed = useMemo(() => (content === null ? [] : columnsOf(content, sheet)), [content, sheet]);
  const options = [FOUND_OUT, ...listed.map(({ name, label }) => ({ value: name, label }))];
  return (
    <>
      {kind === 'probes' && (
        <ChoiceRow
          label="Forces in"
          testId="import-forceUnits"
          value={forceUnits}
          options={FORCE_UNITS}
          choose={(next) => choose({ forceUnits: next })}
        />
      )}
      {kind === 'heights' && (
        <ChoiceRow
          label="Heights in"
          testId="import-heightUnits"
          value={heightUnits}
          options={LENGTH_UNITS}
          choose={(next) => choose({ heightUnits: next })}
        />
      )}
      {kind === 'probes' && (
        <LengthRow
          label="Gap that parts sites"
          testId="import-gap"
          value={gap}
          empty="found out"
          choose={(next) => choose({ gap: next })}
        />
      )}
      {listed.length > 0 && (
        <fieldset className={styles.columns}>
          <legend>Columns</legend>
          {COLUMNS[kind].map(([key, label]) => (
            <ChoiceRow
              key={key}
              label={label}
              testId={`import-column-${key}`}
              value={columns[key] ?? ''}
              options={options}
              choose={(name) => choose({ columns: { ...columns, [key]: name } })}
            />
          ))}
        </fieldset>
      )}
    </>
  );
}

/** Columns of a list; none of a file that is no list, which the reading says. */
function columnsOf(content: Uint8Array, sheet: string): readonly ListedColumn[] {
  try {
    return listedColumns(content, sheet === '' ? undefined : sheet);
  } catch {
    return [];
  }
}
