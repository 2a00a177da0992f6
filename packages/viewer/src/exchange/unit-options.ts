import { typeset } from '../format/number.ts';

/** Where nothing is chosen. */
export const FOUND_OUT = { value: '', label: 'as the file says' };

const options = (units: readonly string[]) => [FOUND_OUT, ...units.map((value) => ({ value, label: typeset(value) }))];

export const LENGTH_UNITS = options(['mm', 'um', 'mil', 'inch']);
export const FORCE_UNITS = options(['N', 'mN', 'cN', 'gf', 'ozf', 'lbf']);
