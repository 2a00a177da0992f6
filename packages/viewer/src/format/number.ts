import { micrometreLimit, micrometreMargin } from '@flathead/solver';

/** A value as a field shows it: at most six decimals, none superfluous, a true minus sign left to the typesetter. */
export function fieldText(value: number): string {
  return String(Number(value.toFixed(6)));
}

/** A value as a field shows it by powers of ten, to six figures, none superfluous: `2.5e-7`. */
export function exponentText(value: number): string {
  return Number(value.toPrecision(6)).toExponential().replace('e+0', '');
}

/** A coordinate, mm, with one decimal, or more where the value has them: `12.5`, `-0.25`. */
export function coordinateText(value: number): string {
  const short = value.toFixed(1);
  return signed(Math.abs(Number(short) - value) < 1e-9 ? short : fieldText(value));
}

/** Digits of a deflection in um: 47.3, 128, 6.28. The command line writes the same. */
export function micrometreDigits(millimetres: number): string {
  const um = Math.abs(millimetres) * 1000;
  return um.toFixed(um >= 100 ? 0 : um >= 10 ? 1 : 2);
}

/** Limit on a deflection, um, as the verdict writes it: `35.0`. */
export function limitDigits(millimetres: number): string {
  return micrometreLimit(millimetres).replace(' um', '');
}

/** What a deflection leaves of its limit, or lacks, um, so that the numbers shown add up: `4.6` of 39.6 and 35.0. */
export function marginDigits(value: number, limit: number): string {
  return micrometreMargin(value, limit).replace(' um', '');
}

/** Probability to two figures: `0.12`, `3.4e-7`; below what can be told from none `<1e-12`. */
export function probabilityDigits(value: number): string {
  if (value < 1e-12) return value === 0 ? '0' : '<1e-12';
  return value >= 0.01 ? fieldText(Number(value.toPrecision(2))) : value.toExponential(1).replace('-', MINUS);
}

/** Force, N: `4.25`, `12.3`, `1250`, with a true minus sign. */
export function forceDigits(newtons: number): string {
  const size = Math.abs(newtons);
  const text = newtons.toFixed(size >= 100 ? 0 : size >= 1 ? 1 : size >= 0.1 || size === 0 ? 2 : 4);
  return signed(Number(text) === 0 ? text.replace('-', '') : text);
}

/** What a fastener does to the head, with the size of its force, N: `holds 35.3`, `pushes 31.4`. */
export function fastenerForce({ reaction, holds }: { readonly reaction: number; readonly holds: boolean }): string {
  if (!holds) return 'let go';
  const size = forceDigits(Math.abs(reaction));
  return Number(size) === 0 ? '0' : `${reaction < 0 ? 'holds' : 'pushes'} ${size}`;
}

/** Stress, MPa, to three figures: `38.2`. */
export function stressDigits(stress: number): string {
  return fieldText(Number(stress.toPrecision(3)));
}

/** Digits of an amount of a criterion, without sign: a length as a deflection in um, N and ratios to three figures. */
export function amountDigits(value: number, unit: 'mm' | 'N' | '1'): string {
  return unit === 'mm' ? micrometreDigits(value) : fieldText(Number(Math.abs(value).toPrecision(3)));
}

/** How that amount's unit is written; nothing for a ratio. */
export function unitText(unit: 'mm' | 'N' | '1'): string {
  return { mm: '\u00b5m', N: 'N', 1: '' }[unit];
}

/** Signed deflection in um with a true minus sign: `+47.3`. */
export function signedMicrometres(millimetres: number): string {
  const digits = micrometreDigits(millimetres);
  return Number(digits) === 0 ? digits : `${millimetres < 0 ? MINUS : '+'}${digits}`;
}

/** Share of a limit about it within which no digit is dropped. */
const CLOSE = 0.05;

/**
 * A deflection in um for where there is little room, the sign only towards the board: `47`, `\u221212`, small ones as `2.5`.
 * Within 5 % of the limit it has all its digits, so that rounding never hides on which side it is.
 */
export function shortMicrometres(millimetres: number, limit: number): string {
  const size = Math.abs(millimetres);
  const close = Math.abs(size - limit) <= CLOSE * limit;
  const digits = close ? micrometreDigits(size) : (size * 1000).toFixed(size < 0.00995 ? 1 : 0);
  return millimetres < 0 && Number(digits) !== 0 ? `${MINUS}${digits}` : digits;
}

/** Puts the Greek letter into the solver's plain `um`, a true minus sign before a number that leads, and a no-break space between a number and its unit. */
export function typeset(sentence: string): string {
  return sentence
    .replace(/^-(?=\d)/, MINUS)
    .replace(/\bum\b/g, '\u00b5m')
    .replace(BEFORE_UNIT, '\u00a0');
}

/** The space after a digit and before a unit that is a word of its own. */
const BEFORE_UNIT = /(?<=\d) (?=(?:\u00b5m|mm|mil|k?N|[MG]Pa|degC|ppm|%)(?![\p{L}\d]))/gu;

const MINUS = '\u2212';

function signed(text: string): string {
  return text.replace('-', MINUS);
}
