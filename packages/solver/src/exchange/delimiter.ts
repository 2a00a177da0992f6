const DELIMITERS = ['\t', ';', '|', ','] as const;
const NAMES: Readonly<Record<string, string>> = {
  '\t': 'tabs',
  ';': 'semicolons',
  '|': 'bars',
  ',': 'commas',
  ' ': 'blanks',
};

/** What a sign between cells is called. */
export function delimiterName(delimiter: string): string {
  return NAMES[delimiter] ?? `"${delimiter}"`;
}

/**
 * Sign between the cells of some lines: the first that most of them have; blanks where commas are decimal signs between
 * them, or nothing else is there.
 */
export function delimiterOf(lines: readonly string[]): string {
  const most = (test: (line: string) => boolean) => lines.filter(test).length > lines.length / 2;
  const found = DELIMITERS.find((mark) => most((line) => line.trim().includes(mark)));
  const spaced = (line: string) => line.trim().split(/\s+/).length > 1;
  const between = most(
    (line) =>
      spaced(line) &&
      line
        .trim()
        .split(/\s+/)
        .every((cell) => /^[+-]?\d+,\d+$/.test(cell)),
  );
  if (found === ',' && between) return ' ';
  return found ?? (most(spaced) ? ' ' : ',');
}
