/** Of the known names those that a writer of `word` may have meant, best first, at most three. */
export function nearNames(word: string, known: readonly string[]): string[] {
  const asked = plain(word);
  return known
    .map((name) => ({ name, distance: nearness(asked, plain(name)) }))
    .filter(({ distance }) => distance < Infinity)
    .sort((a, b) => a.distance - b.distance)
    .slice(0, 3)
    .map(({ name }) => name);
}

/** ` Did you mean "a" or "b"?`, or nothing. */
export function didYouMean(word: string, known: readonly string[]): string {
  const near = nearNames(word, known);
  return near.length === 0 ? '' : ` Did you mean ${near.map((name) => `"${name}"`).join(' or ')}?`;
}

/** Letters and digits only: `Alumina 96 %` is written as `alumina-96`. */
function plain(name: string): string {
  return name
    .slice(0, 100)
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');
}

function nearness(asked: string, known: string): number {
  const distance = editDistance(asked, known);
  if (distance <= Math.max(1, Math.floor(Math.max(asked.length, known.length) / 4))) return distance;
  const [short, long] = asked.length < known.length ? [asked, known] : [known, asked];
  return short.length >= 3 && long.includes(short) ? long.length : Infinity;
}

/** Least number of letters inserted, removed, replaced, or swapped with their neighbour (optimal string alignment). */
function editDistance(a: string, b: string): number {
  let [before, last] = [new Array<number>(b.length + 1).fill(0), Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = last[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1);
      row[j] = Math.min(replaced, last[j] + 1, row[j - 1] + 1);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        row[j] = Math.min(row[j], before[j - 2] + 1);
    }
    [before, last] = [last, row];
  }
  return last[b.length];
}
