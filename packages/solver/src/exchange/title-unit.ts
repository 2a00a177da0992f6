import { Fault } from '../fault/fault.ts';
import { type Quantity, unitNames, unitOf } from './units.ts';

/** Words in the brackets of a title that are no unit and change nothing. */
const HARMLESS =
  /^(nom|nominal|abs|absolute|rel|relative|center|centre|mid|middle|top|bottom|board|dut|typ|typical|probe|pin|pad|tip|axis|coord|coordinate|each|[xyzf]|\d+)$/i;

/**
 * Unit that a title gives at its end, in brackets, behind a stroke or a comma, or as its last word: `x (mm)`, `y_um`.
 *
 * @param isGiven whether the caller gives one in place of what is not known
 * @throws Fault UNREADABLE for brackets or strokes with a word that is no known unit
 */
export function titleUnit(
  title: string,
  quantity: Quantity,
  isGiven: boolean,
  line: number,
  what: string,
): string | null {
  const bracket = /[([{/]([^)\]}]*)/.exec(title)?.[1].trim();
  const words = title.split(/[\s([{/_,\])}-]+/).filter((word) => word !== '');
  const unit =
    bracket === undefined
      ? words.length < 2
        ? null
        : unitOf(words[words.length - 1], quantity)
      : unitOf(bracket.replace(/^in\s+/i, ''), quantity);
  if (unit !== null || bracket === undefined || bracket === '' || isGiven || HARMLESS.test(bracket)) return unit;
  throw new Fault(
    'UNREADABLE',
    `The title "${title.slice(0, 40)}" on line ${line} of the ${what} gives "${bracket.slice(0, 20)}", which is no known unit of ${quantity}. Use ${unitNames(quantity).join(', ')} there, or say the unit beside the file.`,
    '',
    { line, value: bracket, expected: unitNames(quantity) },
  );
}

/** Words of a line that holds nothing but units, each with or without brackets; `null` for any other line. */
export function unitRow(cells: readonly string[]): string[] | null {
  const words = cells.map((cell) => cell.replace(/^[([{]\s*|\s*[)\]}]$/g, ''));
  const isUnit = (word: string) => unitOf(word, 'length') !== null || unitOf(word, 'force') !== null;
  return words.some(isUnit) && words.every((word) => isUnit(word) || /^-*$/.test(word)) ? words : null;
}
