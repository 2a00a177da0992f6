import type { z } from 'zod';
import { Fault, type FaultCode } from '../fault/fault.ts';
import { issueWording, shown } from './issue-wording.ts';
import { meantIssues } from './meant-issues.ts';
import { requireTameTree } from './tame-tree.ts';

/** Issues listed in the details of a fault; more help nobody. */
const MOST_ISSUES = 50;
/** Issues put into words besides whole unions, which zod words last. */
const MOST_WORDED = 2000;

/** One thing wrong with a model. */
export interface SchemaIssue {
  readonly code: FaultCode;
  readonly message: string;
  readonly path: string;
}

/**
 * The value as the schema's type.
 *
 * @param noun what the whole is called in messages, such as `head model`
 * @throws Fault SCHEMA, OUT_OF_RANGE or TOO_LARGE with the path of the first thing wrong; `details.issues` lists all
 */
export function checkSchema<T>(schema: z.ZodType<T>, value: unknown, noun: string): T {
  requireTameTree(value);
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new Fault('SCHEMA', `The file holds ${shown(value)}; expected a ${noun}: an object in braces.`, '', {
      value: shown(value),
      expected: 'an object',
    });
  let worded = 0;
  const error = (issue: z.core.$ZodRawIssue) =>
    issue.code === 'invalid_union' || worded++ < MOST_WORDED ? issueWording(issue) : 'is not as expected';
  const checked = schema.safeParse(value, { error, reportInput: true });
  if (checked.success) return checked.data;
  const meant = meantIssues(checked.error.issues.slice(0, MOST_ISSUES));
  const count = meant.length + Math.max(0, checked.error.issues.length - MOST_ISSUES);
  const issues = meant.slice(0, MOST_ISSUES).map((issue) => describe(issue, noun));
  const typo = meant.findIndex(({ code, message }) => code === 'unrecognized_keys' && message.includes('Did you mean'));
  const first = Math.max(0, typo < issues.length ? typo : 0);
  const { code, message, path } = issues[first];
  const more = count > 1 ? ` (${count - 1} more ${count === 2 ? 'issue' : 'issues'})` : '';
  throw new Fault(code, message + more, path, { value: shown(meant[first].input), issues, count });
}

function describe(issue: z.core.$ZodIssue, noun: string): SchemaIssue {
  const owner = issue.path.map(String).join('.');
  const key = issue.code === 'unrecognized_keys' ? [issue.keys[0]] : [];
  const message = `${owner === '' ? `The ${noun}` : owner} ${issue.message}`;
  return {
    code: codeOf(issue),
    message: /[.?]$/.test(message) ? message : `${message}.`,
    path: [...issue.path, ...key].map(String).join('.').slice(0, 300),
  };
}

function codeOf(issue: z.core.$ZodIssue): FaultCode {
  if (typeof issue.input === 'number' && !Number.isFinite(issue.input)) return 'OUT_OF_RANGE';
  if (issue.code !== 'too_small' && issue.code !== 'too_big') return 'SCHEMA';
  if (issue.origin === 'number' || issue.origin === 'int') return 'OUT_OF_RANGE';
  return issue.code === 'too_big' && issue.origin === 'array' && Number(issue.maximum) > 2 ? 'TOO_LARGE' : 'SCHEMA';
}
