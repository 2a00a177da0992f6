import { unitFactor } from './units.ts';

/** Digits with or without a decimal comma or point, thousands set apart by spaces if at all, and a power of ten. */
const NUMBER = /^([+-]?(?:\d{1,3}(?: \d{3})+|\d*)(?:[.,]\d*)?(?:e[+-]?\d+)?) ?([^\d.,+-].*)?$/i;

/**
 * Number as an engineer types or pastes it: decimals by comma or point, thousands apart by spaces or apostrophes, any kind
 * of minus and space, a unit after it. `7,5`, `7.5`, ` 7,5 mm` and `+7.5` are 7.5; `1 234,5` is 1234.5; in a field of mm
 * `0.3 in` is 7.62.
 *
 * A comma and a point together, or two of one, could group thousands or not: such a text is refused rather than guessed.
 *
 * @param unit written after the field; the text may have it or another of its kind, which is converted
 * @returns `null` when the text is no number
 */
export function parseNumber(text: string, unit = ''): number | null {
  const bare = text
    .normalize('NFKC')
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/\s+/g, ' ')
    .replace(/(?<=\d)['\u2019](?=\d{3})/g, ' ')
    .trim();
  const [, digits, rest = ''] = NUMBER.exec(bare) ?? [];
  if (digits === undefined || !/\d/.test(digits.replace(/e.*/i, ''))) return null;
  const factor = unitFactor(rest, unit);
  if (factor === null) return null;
  const number = Number(digits.replaceAll(' ', '').replace(',', '.'));
  return factor === 1 ? number : Number((number * factor).toPrecision(12));
}
