import { Fault, type FaultCode, readHeadModel, readPlateProblem, solveHead, solvePlate } from '@flathead/solver';
import type { FuzzCase } from './case-of-seed.ts';

/** A case that was solved, or refused with a code. */
export type Outcome = 'solved' | FaultCode;

/** Codes of refusals; what is not among them is a failure of ours. */
const REFUSALS: ReadonlySet<FaultCode> = new Set([
  'NOT_JSON',
  'TOO_LARGE',
  'SCHEMA',
  'OUT_OF_RANGE',
  'UNKNOWN_MATERIAL',
  'UNKNOWN_SCREW',
  'BAD_SHAPE',
  'OUTSIDE',
  'OVERLAP',
  'MECHANISM',
  'DISCONNECTED',
  'NOT_YET',
  'MESH',
]);
/** Refusals of a text or of the model as a whole, which have no path. */
const WITHOUT_PATH: ReadonlySet<FaultCode> = new Set(['NOT_JSON', 'TOO_LARGE', 'SCHEMA']);
/** Words that tell what to do, or what would have been right. */
const REMEDY =
  /expected|must|at most|at least|known are|did you mean|\b(add|allow|ask|change|check|choose|correct|cut|draw|enlarge|give|hold|join|keep|leave|lower|make|merge|move|name|narrow|omit|open|put|raise|reduce|remove|rename|save|separate|shift|shorten|simplify|split|thin|turn|try|use|widen|write)\b/i;

/** Most of a second that any case may take. */
export const SLOWEST = 10;

/**
 * Reads and solves a case.
 *
 * @throws Error that says what is wrong with the answer or the refusal
 */
export function outcomeOf(given: FuzzCase): Outcome {
  try {
    if (given.of === 'plate') {
      const result = solvePlate(readPlateProblem(given.text));
      requireFinite(result, 'result');
      require(result.residual !== null && result.residual < 1e-9, `residual ${result.residual}`);
    } else {
      // A full answer now and then: it takes four solves and more.
      const quality = given.seed % 4 === 1 ? 'full' : 'live';
      requireFinite(solveHead(readHeadModel(given.text), { quality }).result, 'result');
    }
    return 'solved';
  } catch (thrown) {
    if (!(thrown instanceof Fault)) throw thrown;
    requireActionable(thrown);
    return thrown.code;
  }
}

function requireActionable({ code, message, path }: Fault): void {
  require(REFUSALS.has(code), `${code}: ${message}`);
  require(message.length > 20 && /[.?)]$/.test(message), `no sentence: ${message}`);
  require(REMEDY.test(message), `no remedy: ${code}: ${message}`);
  require(path !== '' || WITHOUT_PATH.has(code), `no path: ${code}: ${message}`);
  // A number beyond doubles reads as infinite and may be quoted as that.
  require(!/undefined|NaN|\[object|Infinity(?!; expected a finite)/.test(message), `not fit to read: ${message}`);
}

/** Every number in an answer is finite. */
function requireFinite(value: unknown, path: string): void {
  if (typeof value === 'number') require(Number.isFinite(value), `${path} is ${value}`);
  else if (ArrayBuffer.isView(value) || Array.isArray(value)) {
    const list = value as unknown as ArrayLike<unknown>;
    for (let i = 0; i < list.length; i++) requireFinite(list[i], `${path}.${i}`);
  } else if (typeof value === 'object' && value !== null)
    for (const [key, child] of Object.entries(value)) requireFinite(child, `${path}.${key}`);
}

function require(holds: boolean, what: string): asserts holds {
  if (!holds) throw new Error(what);
}
