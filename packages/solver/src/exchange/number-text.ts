import { factorOf, type Quantity, unitOf } from './units.ts';

/** What a cell holds: a number in mm or N where it brings its own unit along, or the reason why it is none. */
export type NumberText =
  | { readonly value: number; readonly unit: string | null }
  | { readonly value: null; readonly reason: string };

const PLAIN = /^-?\d{1,12}(\.\d{1,12})?$/;
const NUMBER = /^([+-]?(?:\d[\d.,' ]*|[.,]\d+)(?:[eE][+-]?\d+)?)\s*([^\d\s.,][^\d]*)?$/u;

/** Letters of a number with its unit, at most: what is longer is not looked into. */
const LONGEST = 100;

/**
 * Reads decimal point and comma, grouped thousands, a sign in any print, and a unit behind the number.
 *
 * @param isGrouped whether the other sign is known to group thousands, so that one group is no doubt
 */
export function numberOf(text: string, decimal: '.' | ',', quantity: Quantity, isGrouped = false): NumberText {
  if (decimal === '.' && PLAIN.test(text)) return { value: Number(text), unit: null };
  if (text.length > LONGEST) return { value: null, reason: `is "${short(text)}", which is no number` };
  const cell = text
    .trim()
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/[\u00a0\u202f\u2009]/g, ' ');
  if (cell === '') return { value: null, reason: 'is empty' };
  const match = NUMBER.exec(cell);
  if (match === null) return { value: null, reason: `is "${short(cell)}", which is no number` };
  const [, digits, word] = match;
  const unit = word === undefined ? null : unitOf(word, quantity);
  if (word !== undefined && unit === null)
    return { value: null, reason: `is "${short(cell)}"; "${short(word.trim())}" is no known unit of ${quantity}` };
  const plain = plainDigits(digits.trim(), decimal, isGrouped);
  if (plain === null)
    return {
      value: null,
      reason: `is "${short(cell)}", where the file has a decimal ${decimal === ',' ? 'comma' : 'point'}; write all numbers alike`,
    };
  const value = Number(plain) * (unit === null ? 1 : factorOf(unit, quantity));
  if (!Number.isFinite(value)) return { value: null, reason: `is "${short(cell)}", which is no finite number` };
  return { value, unit };
}

/** Digits as a program writes them; `null` where the other decimal sign is used. */
function plainDigits(digits: string, decimal: '.' | ',', isGrouped: boolean): string | null {
  const group = decimal === ',' ? '.' : ',';
  const [whole, ...rest] = digits.replace(/[eE].*$/, '').split(decimal);
  if (rest.length > 1 || rest.some((part) => part.includes(group))) return null;
  // Groups of thousands: only with a decimal sign of its own or more than one group is a mark surely no decimal sign.
  const grouped = new RegExp(`^[+-]?\\d{1,3}(?:[${group}' ]\\d{3})+$`).test(whole);
  if (/[.,' ]/.test(whole) && !grouped) return null;
  if (!isGrouped && whole.includes(group) && rest.length === 0 && whole.split(group).length === 2) return null;
  const exponent = /[eE].*$/.exec(digits)?.[0] ?? '';
  return `${whole.replace(/[.,' ]/g, '')}${rest.length === 0 ? '' : `.${rest[0]}`}${exponent}`;
}

/** Whether text reads as a number with either decimal sign. */
export function looksNumeric(text: string): boolean {
  return numberOf(text, '.', 'length').value !== null || numberOf(text, ',', 'length').value !== null;
}

function short(text: string): string {
  return text.length > 24 ? `${text.slice(0, 24)}...` : text;
}
