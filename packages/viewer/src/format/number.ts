/** A value as a field shows it: at most six decimals, none superfluous, a true minus sign left to the typesetter. */
export function fieldText(value: number): string {
  return String(Number(value.toFixed(6)));
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

/** Puts the Greek letter into the solver's plain `um`. */
export function typeset(sentence: string): string {
  return sentence.replace(/\bum\b/g, '\u00b5m');
}

const MINUS = '\u2212';

function signed(text: string): string {
  return text.replace('-', MINUS);
}
