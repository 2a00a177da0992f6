import { parseNumber } from './parse-number.ts';

/**
 * Corners of a polygon as typed or pasted, a line for each: `12.5 8`, `12,5; 8` or `12.5, 8`.
 *
 * Two numbers in a line are apart by a tab, a semicolon, a comma with a space, or spaces.
 */
export function parseCorners(text: string): {
  readonly corners: readonly (readonly [number, number])[];
  /** What is wrong with the first line that is none, in words. */
  readonly wrong: string | null;
} {
  const corners: (readonly [number, number])[] = [];
  for (const [i, line] of text.split('\n').entries()) {
    const bare = line.trim().replace(/^\[|\],?$/g, '');
    if (bare === '') continue;
    const parts = bare.split(bare.includes(';') ? /\s*;\s*/ : /\t+|,\s+|\s+/).filter((part) => part !== '');
    const [x, y] = parts.map((part) => parseNumber(part, 'mm'));
    if (parts.length !== 2 || x === null || y === null)
      return { corners, wrong: `Line ${i + 1} is "${bare.slice(0, 24)}"; expected x and y in mm, such as 12.5 8.` };
    corners.push([x, y]);
  }
  return { corners, wrong: corners.length < 3 ? `${corners.length} corners; a polygon has three or more.` : null };
}

/** The same the other way. */
export function formatCorners(corners: unknown): string {
  if (!Array.isArray(corners)) return '';
  return corners.map((corner) => (Array.isArray(corner) ? corner.join(' ') : '')).join('\n');
}
