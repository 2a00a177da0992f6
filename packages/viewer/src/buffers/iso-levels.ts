/** Fewest iso-lines from zero to the limit. */
const LEAST = 4;

/**
 * Distance between iso-lines, mm: a round number of um (1, 2 or 5 times a power of ten) that puts 4 to 9 steps below
 * the limit.
 */
export function isoStep(limit: number): number {
  const most = (limit * 1000) / LEAST;
  const decade = 10 ** Math.floor(Math.log10(most) + 1e-9);
  const lead = most / decade + 1e-9;
  return ((lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * decade) / 1000;
}

/** Levels from zero up to `top`, mm; the last may be above the limit. */
export function isoLevels(limit: number, top: number): number[] {
  const step = isoStep(limit);
  return Array.from({ length: Math.floor(top / step + 1e-9) + 1 }, (_, i) => i * step);
}
