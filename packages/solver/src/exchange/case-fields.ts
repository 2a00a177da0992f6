import { Fault } from '../fault/fault.ts';
import { didYouMean } from '../plate/near-names.ts';
import type { CaseResult, HeadResult } from '../results/head-result.ts';

/** A field of one value at each node of the mesh. */
export interface NodalField {
  readonly name: 'deflection' | 'deviation' | 'tension';
  readonly unit: 'mm' | 'MPa';
  readonly meaning: string;
  readonly values: Float64Array;
}

/**
 * The case of a name, or the one with the largest bow where none is given.
 *
 * @throws Fault SCHEMA for an unknown name
 */
export function caseOf({ cases }: HeadResult, name?: string): CaseResult {
  if (name === undefined) return cases.reduce((a, b) => (Math.abs(b.bow.value) > Math.abs(a.bow.value) ? b : a));
  const found = cases.find((solved) => solved.name === name);
  if (found !== undefined) return found;
  const known = cases.map((solved) => solved.name);
  throw new Fault('SCHEMA', `The head has no case "${name}".${didYouMean(name, known)}`, 'cases', {
    value: name,
    expected: known.slice(0, 50),
  });
}

/** Fields of a case that are written: deflection, deviation from the fastener plane, and tension where it was solved. */
export function fieldsOf({ w, deviation, strength }: CaseResult): NodalField[] {
  const fields: NodalField[] = [
    { name: 'deflection', unit: 'mm', meaning: 'w along +z, away from the board', values: w },
    {
      name: 'deviation',
      unit: 'mm',
      meaning: 'w less the fastener plane: what the bow is measured on',
      values: deviation,
    },
  ];
  if (strength === null) return fields;
  const meaning = 'largest tensile principal stress on either face of the body, at hole edges where drilled; 0 off it';
  return [...fields, { name: 'tension', unit: 'MPa', meaning, values: strength.bodyTension }];
}
