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
