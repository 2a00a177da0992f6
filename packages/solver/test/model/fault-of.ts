import { Fault } from '../../src/fault/fault.ts';

/** The fault that a call throws; fails the test when it throws none, or something else. */
export function faultOf(call: () => unknown): Fault {
  try {
    call();
  } catch (thrown) {
    if (thrown instanceof Fault) return thrown;
    throw thrown;
  }
  throw new Error('expected a Fault, but nothing was thrown');
}
