import { Fault } from '../fault/fault.ts';

/** Levels of a model's deepest value: `frame.outer.polygon.0.0` has five. */
const DEEPEST = 32;
/** Values in a model; an outline of 20 000 corners has 60 000. */
const MOST_VALUES = 500_000;
/** The longest list of any model: the loads of a plate problem. */
const LONGEST_LIST = 50_000;

interface Step {
  readonly value: object;
  readonly path: string;
  readonly depth: number;
}

/**
 * Refuses data that would be costly or treacherous to check: nested beyond use (or in a circle), with millions of
 * values, or with a key `__proto__`, which assignments take for something else than a key.
 *
 * @throws Fault TOO_LARGE or SCHEMA
 */
export function requireTameTree(root: unknown): void {
  if (typeof root !== 'object' || root === null) return;
  const steps: Step[] = [{ value: root, path: '', depth: 1 }];
  let count = 0;
  for (let step = steps.pop(); step !== undefined; step = steps.pop()) {
    const { value, path, depth } = step;
    const keys = Object.keys(value);
    count += keys.length;
    const at = path === '' ? 'The model' : path;
    if (depth > DEEPEST)
      refuse(
        `The model is nested deeper than ${DEEPEST} levels at ${path.slice(0, 60)}`,
        path,
        `at most ${DEEPEST} levels`,
      );
    if (Array.isArray(value) && value.length > LONGEST_LIST)
      refuse(`${at} is a list of ${value.length} entries; at most ${LONGEST_LIST} are read`, path, 'a shorter list');
    if (count > MOST_VALUES)
      refuse(`The model holds more than ${MOST_VALUES} values`, '', `at most ${MOST_VALUES} values`);
    if (keys.includes('__proto__'))
      throw new Fault(
        'SCHEMA',
        `${at} has the key "__proto__", which no model has. Remove it.`,
        join(path, '__proto__'),
      );
    for (const key of keys) {
      const child: unknown = Reflect.get(value, key);
      if (typeof child === 'object' && child !== null)
        steps.push({ value: child, path: join(path, key), depth: depth + 1 });
    }
  }
}

function join(path: string, key: string): string {
  return path === '' ? key : `${path}.${key}`;
}

function refuse(what: string, path: string, expected: string): never {
  throw new Fault('TOO_LARGE', `${what}. Simplify the model.`, path, { expected });
}
