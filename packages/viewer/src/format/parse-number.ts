/**
 * Number as an engineer types or pastes it: decimals by comma or point, any kind of minus and space, a unit after it.
 * `7,5`, `7.5`, ` 7,5 mm` and `+7.5` are 7.5.
 *
 * A comma and a point together, or two of one, could group thousands or not: such a text is refused rather than guessed.
 *
 * @param unit written after the field; may be repeated in the text
 * @returns `null` when the text is no number
 */
export function parseNumber(text: string, unit = ''): number | null {
  let bare = text
    .normalize('NFKC')
    .replace(/[\u2212\u2013]/g, '-')
    .trim();
  if (unit !== '' && bare.toLowerCase().endsWith(unit.normalize('NFKC').toLowerCase()))
    bare = bare.slice(0, bare.length - unit.length).trim();
  bare = bare.replace(',', '.');
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(bare) ? Number(bare) : null;
}
