import { type FaultCode, type FaultReport, faultReport } from '@flathead/solver';
import { paintFor, type Terminal } from './terminal.ts';

/** What a command ends with. */
export const EXIT = { pass: 0, fail: 1, badInput: 2, internal: 3 } as const;

/** Faults that no change of the input can be expected to cure. */
const INTERNAL: ReadonlySet<FaultCode> = new Set(['INTERNAL', 'NOT_DEFINITE', 'WORKER_LOST', 'CANCELLED']);

/** Issues listed below the first. */
const MOST_ISSUES = 10;

/** Reports anything thrown: as JSON to stdout, or in words to stderr. Returns the exit code. */
export function refuse(thrown: unknown, json: boolean, terminal: Terminal): number {
  const report = faultReport(thrown);
  terminal.log?.({ event: 'refused', ...report });
  if (json) terminal.out(`${JSON.stringify(report, null, 2)}\n`);
  else if (terminal.log === undefined) terminal.err(inWords(report, terminal));
  return INTERNAL.has(report.code) ? EXIT.internal : EXIT.badInput;
}

function inWords({ code, message, path, details }: FaultReport, terminal: Terminal): string {
  const paint = paintFor(terminal);
  const head = INTERNAL.has(code) ? `This should not happen: ${message}` : message;
  const issues = messagesOf(details.issues);
  const listed = issues.length < 2 ? [] : issues.slice(0, MOST_ISSUES).map((issue) => `  - ${issue}`);
  const where = path === '' ? code : `${code} at ${path}`;
  return `${[paint.bold(head), ...listed, paint.dim(where)].join('\n')}\n`;
}

function messagesOf(issues: unknown): string[] {
  return Array.isArray(issues) ? issues.map(({ message }) => String(message)) : [];
}
