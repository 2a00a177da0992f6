import CliTable from 'cli-table3';
import type { Paint } from './terminal.ts';

const NO_RULES = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  mid: '',
  'mid-mid': '',
  right: '',
  'right-mid': '',
  middle: '',
};

/**
 * Columns under their headings, numbers to the right, without rules. The first column is a name, to the left.
 *
 * @param left further columns that are words
 */
export function table(
  headings: readonly string[],
  rows: readonly (readonly string[])[],
  paint: Paint,
  left: readonly number[] = [],
): string {
  const made = new CliTable({
    chars: NO_RULES,
    colAligns: headings.map((_, i) => (i === 0 || left.includes(i) ? 'left' : 'right')),
    style: { head: [], border: [], 'padding-left': 2, 'padding-right': 0 },
  });
  made.push(
    headings.map((heading) => paint.dim(heading)),
    ...rows.map((row) => [...row]),
  );
  return made
    .toString()
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n');
}
