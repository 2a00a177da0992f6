import { Fault } from '../fault/fault.ts';
import { checkSchema } from './check-schema.ts';
import { type PlateProblem, plateProblemSchema } from './plate-problem.ts';
import { readJson } from './read-json.ts';
import { checkPlateProblem } from './validate.ts';

/**
 * Plate problem of a JSON text, checked against its schema and for its meaning.
 *
 * @throws Fault that says where the text, a value or the problem as a whole is wrong
 */
export function readPlateProblem(text: string): PlateProblem {
  const value = readJson(text);
  if (typeof value === 'object' && value !== null && 'flathead' in value && !('plate' in value))
    throw new Fault(
      'SCHEMA',
      'This is a head model (it has the key "flathead"), not a plate problem. Use `flathead check` on it.',
      'flathead',
      { expected: 'a plate problem, with "plate": 1' },
    );
  const problem = checkSchema(plateProblemSchema, value, 'plate problem');
  checkPlateProblem(problem);
  return problem;
}
