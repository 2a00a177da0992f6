import { parseNumber } from './parse-number.ts';

/**
 * Two numbers as an engineer types a place: `12.5 -3`, `12,5 -3,25`, `12,5; -3`, `12.5, -3.25`, `12.5,-3.25`.
 *
 * A semicolon or a space parts the two; without either, a comma does where that leaves one reading: `12,5,3` could be two
 * places and is refused.
 *
 * @returns `null` when the text is no place, or could be two
 */
export function parsePlace(text: string): readonly [number, number] | null {
  const bare = text
    .trim()
    .replace(/^\(|\)$/g, '')
    .replace(/\bmm\b/gi, ' ')
    .replace(/\b[xy]\s*=?/gi, ' ')
    .trim();
  const parts = bare.includes(';') ? bare.split(';') : bare.split(/\s*[,;]?\s+/);
  if (parts.length === 2) return pair(parts[0], parts[1]);
  if (parts.length !== 1) return null;
  const pieces = bare.split(',');
  if (pieces.length === 2) return pair(pieces[0], pieces[1]);
  return pieces.length === 4 ? pair(pieces.slice(0, 2).join(), pieces.slice(2).join()) : null;
}

function pair(first: string, second: string): readonly [number, number] | null {
  const [x, y] = [parseNumber(first), parseNumber(second)];
  return x === null || y === null ? null : [x, y];
}
