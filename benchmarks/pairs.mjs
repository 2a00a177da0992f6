import { execSync } from 'node:child_process';

/** What each measure may be called in the JSON line of a command. */
const SPELLINGS = { analyse: ['analyse_ms', 'analyze_ms'], factor: ['factor_ms'], solve: ['solve_ms'] };

/** Median of some numbers. */
export const median = (values) => [...values].sort((a, b) => a - b)[values.length >> 1];

/**
 * Runs two commands in turns. Machines are shared and noisy: only ratios of neighbours in time mean anything.
 *
 * @returns by measure, the milliseconds of both and their ratios, pair by pair
 */
export function pairs(count, ours, theirs) {
  const rows = Array.from({ length: count }, () => [lastLine(ours), lastLine(theirs)]);
  const value = (row, spellings) => spellings.map((spelling) => row[spelling]).find((number) => number !== undefined);
  return Object.fromEntries(
    Object.entries(SPELLINGS).map(([name, spellings]) => {
      const both = rows.map((row) => row.map((each) => value(each, spellings)));
      return [
        name,
        { ours: both.map(([a]) => a), theirs: both.map(([, b]) => b), ratios: both.map(([a, b]) => a / b) },
      ];
    }),
  );
}

/** The last JSON object that a command prints. */
function lastLine(command) {
  const out = execSync(command, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim();
  return JSON.parse(out.slice(out.lastIndexOf('{')));
}
