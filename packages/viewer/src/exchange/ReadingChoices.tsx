import { type FileKind, fileRoles, sheetNames } from '@flathead/solver/exchange';
import { useMemo } from 'react';
import { ChoiceRow } from '../panels/ChoiceRow.tsx';
import { DrawingChoices } from './DrawingChoices.tsx';
import { ListChoices } from './ListChoices.tsx';
import type { ReadingChoicesProps } from './reading-choices.ts';
import { FIRST_CHOICES } from './readings.ts';
import { LENGTH_UNITS } from './unit-options.ts';

const KINDS: { readonly value: FileKind; readonly label: string }[] = [
  { value: 'probes', label: 'Probe list' },
  { value: 'outline', label: 'Drawing (DXF, SVG)' },
  { value: 'heights', label: 'Heights of the board' },
  { value: 'fasteners', label: 'Fastener list' },
];
const ROLES: Readonly<Record<string, string>> = {
  points: 'Point loads, one a probe',
  field: 'Even fields',
  auto: 'What its layers say',
  outline: 'Outline of the body',
};

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
        choose={(kind) => choose({ ...FIRST_CHOICES, kind, sheet: choices.sheet, units: choices.units })}
      />
      {sheets.length > 1 && !isDrawing && (
        <ChoiceRow
          label="Sheet"
          testId="import-sheet"
          value={choices.sheet === '' ? shown.name : choices.sheet}
          options={sheets.map(({ name, isShown }) => ({ value: name, label: isShown ? name : `${name} (hidden)` }))}
          choose={(sheet) => choose({ sheet, columns: {} })}
        />
      )}
      <ChoiceRow
        label="Lengths in"
        testId="import-units"
        value={choices.units}
        options={LENGTH_UNITS}
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
      {!isDrawing && <ListChoices content={content} choices={choices} choose={choose} />}
      {isDrawing && <DrawingChoices content={content} choices={choices} choose={choose} />}
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
