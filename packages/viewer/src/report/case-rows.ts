import type { CaseResult, HeadModel, HeadResult } from '@flathead/solver';
import { forceDigits, micrometreDigits, signedMicrometres } from '../format/number.ts';
import type { NumberRows } from '../format/number-rows.ts';
import { caseGroups } from '../state/case-groups.ts';
import { caseWords } from './case-words.ts';
import { NONE } from './cells.ts';

/** The cases of the model with what the worst of each does; one line for all touchdowns of a wafer. */
export function caseRows({ cases: given }: HeadModel, { cases }: HeadResult): NumberRows {
  return {
    columns: ['Case', 'State', 'Load, N', 'Largest bow, µm', 'At site', 'Flatness, µm', 'Tilt, µm in 100 mm'],
    rows: caseGroups(cases).map(({ name, cases: members }) => {
      const [worst] = members;
      const state = given.find((other) => other.name === name);
      return [
        members.length > 1 ? `${name} (${members.length}, worst ${worst.name.slice(name.length + 2)})` : name,
        state === undefined ? NONE : caseWords(state),
        forceDigits(worst.load),
        signedMicrometres(worst.bow.value),
        bowPlace(worst.bow),
        micrometreDigits(worst.flatness.minimumZone),
        micrometreDigits(worst.tilt.slope * 100),
      ];
    }),
  };
}

/** The site of a bow, where there is any. */
export function bowPlace({ value, site }: CaseResult['bow']): string {
  return Number(micrometreDigits(value)) === 0 ? NONE : site;
}
