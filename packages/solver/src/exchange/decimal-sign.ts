import { looksNumeric } from './number-text.ts';

/** Rows that the decimal sign is judged by. */
const COUNTED = 2000;

export interface DecimalSign {
  readonly decimal: '.' | ',';
  /** Whether a number has both signs, or one of them twice, so that the other groups thousands. */
  readonly isGrouped: boolean;
  /** A number in doubt: every one with the decimal sign has three digits behind it. */
  readonly doubtful: string | null;
}

/** Decimal sign of a list: a comma where more numbers have one than a point. */
export function decimalOf(rows: readonly { readonly cells: readonly string[] }[]): DecimalSign {
  const count = { '.': 0, ',': 0 };
  const groups = { '.': false, ',': false };
  const decimals: Record<'.' | ',', string[]> = { '.': [], ',': [] };
  for (const { cells } of rows.slice(0, COUNTED))
    for (const cell of cells) {
      const last = cell[Math.max(cell.lastIndexOf(','), cell.lastIndexOf('.'))];
      if ((last !== ',' && last !== '.') || !looksNumeric(cell)) continue;
      const other = last === ',' ? '.' : ',';
      if (cell.indexOf(last) !== cell.lastIndexOf(last)) {
        groups[last] = true;
        continue;
      }
      if (cell.includes(other)) groups[other] = true;
      count[last]++;
      decimals[last].push(cell);
    }
  const seen = groups[','] !== groups['.'];
  const decimal = seen ? (groups[','] ? '.' : ',') : count[','] > count['.'] ? ',' : '.';
  const inDoubt = decimals[decimal].every((cell) => /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/.test(cell));
  return {
    decimal,
    isGrouped: seen,
    doubtful: decimal === ',' && !seen && inDoubt ? (decimals[decimal][0] ?? null) : null,
  };
}

/** What is said of a number in doubt. */
export function doubtOf(number: string | null): string[] {
  if (number === null) return [];
  const value = Number(number.replace(',', '.'));
  return [`"${number}" and its like are read as ${value}: if its sign groups thousands, write them without it.`];
}
