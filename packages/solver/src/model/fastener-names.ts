/** Most names that a sentence lists. */
const MOST = 6;

/** Fasteners as the subject of a sentence: `Fastener W`, `Fasteners N, S`, or six and how many more. */
export function fastenerNames(names: readonly string[]): string {
  const shown =
    names.length <= MOST ? names.join(', ') : `${names.slice(0, MOST).join(', ')} and ${names.length - MOST} more`;
  return names.length === 1 ? `Fastener ${shown}` : `Fasteners ${shown}`;
}
