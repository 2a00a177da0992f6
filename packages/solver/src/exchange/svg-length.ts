/** mm in a CSS pixel, 96 of which are an inch by definition (CSS Values and Units 3). */
export const PIXEL = 25.4 / 96;

/** mm in the units that lengths of a drawing may have. */
export const PER_UNIT: Readonly<Record<string, number>> = {
  ...{ px: PIXEL, '': PIXEL, pt: 25.4 / 72, pc: 25.4 / 6, in: 25.4, cm: 10, mm: 1, q: 0.25 },
};

/** A length and its unit in small letters, empty without one; `null` for what is none, such as per cent. */
export function lengthOf(text: string): { readonly value: number; readonly unit: string } | null {
  const match = /^\s*([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?)\s*(px|pt|pc|in|cm|mm|q)?\s*$/i.exec(text);
  if (match === null || !Number.isFinite(Number(match[1]))) return null;
  return { value: Number(match[1]), unit: (match[2] ?? '').toLowerCase() };
}
