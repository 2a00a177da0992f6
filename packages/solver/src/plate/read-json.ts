import { Fault } from '../fault/fault.ts';
import { syntaxFlaw } from './json-syntax.ts';

/** Longest text that is read, in characters; a file of that size is read by no person. */
export const LONGEST_TEXT = 20_000_000;

/**
 * Value of a JSON text.
 *
 * @throws Fault TOO_LARGE, NOT_JSON, or SCHEMA when an object has a key twice; `details` has line and column
 */
export function readJson(text: string): unknown {
  if (text.length > LONGEST_TEXT)
    throw new Fault(
      'TOO_LARGE',
      `The text has ${(text.length / 1e6).toFixed(1)} million characters; at most ${LONGEST_TEXT / 1e6} million are read. Leave out what the model does not need, or draw outlines with fewer corners.`,
      '',
      { value: text.length, expected: `at most ${LONGEST_TEXT} characters` },
    );
  const json = text.replace(/^\uFEFF/, '');
  if (json.trim() === '')
    throw new Fault(
      'NOT_JSON',
      'The text is empty; expected a model in JSON. Check that the right file was given.',
      '',
      {
        line: 1,
        column: 1,
      },
    );
  const flaw = syntaxFlaw(json);
  if (flaw === null) return JSON.parse(json);
  const before = json.slice(0, flaw.offset).split('\n');
  const place = { line: before.length, column: before[before.length - 1].length + 1 };
  const flawAt = `line ${place.line}, column ${place.column} ${flaw.problem}`;
  if (flaw.kind === 'repetition')
    throw new Fault('SCHEMA', `The text at ${flawAt}; only one of the two can count. Remove the other.`, '', place);
  if (flaw.kind === 'depth')
    throw new Fault('TOO_LARGE', `The text at ${flawAt}. No model needs that; check the file.`, '', place);
  throw new Fault('NOT_JSON', `The text is not JSON: ${flawAt}. Correct it there and try again.`, '', place);
}
