/** Rest between two looks at a counter, ms. */
const REST = 0.05;
/** Rests in one run of a plan after which a helper is taken to have died in the middle of its part: half a minute or so. */
const PATIENCE = 200_000;

/** How long the thread that leads a run has rested for others. */
export interface Patience {
  /** Rests that are left; set before each run. */
  left: number;
}

/** Thrown through a kernel that has waited in vain. */
export class HelperLost extends Error {}

/** Patience for one more run. */
export function renew(patience: Patience, rests = PATIENCE): void {
  patience.left = rests;
}

/**
 * What a compiled kernel takes from its host: its memory, and `rest(counter, now)`, which sleeps for a moment unless the
 * 32-bit counter at that byte address is no longer at `now`. A kernel alone in its memory never rests.
 *
 * @param patience of the thread that leads; helpers wait as long as it takes
 * @throws HelperLost from `rest` when the patience is at its end
 */
export function kernelHost(memory: WebAssembly.Memory, patience: Patience = { left: Infinity }) {
  const rest = (counter: number, now: number): void => {
    if (patience.left-- <= 0) throw new HelperLost('a helper thread ended in the middle of its part');
    // A memory may have grown since the last rest; addresses from 2 GB on come in negative.
    Atomics.wait(new Int32Array(memory.buffer), counter >>> 2, now, REST);
  };
  return { env: { memory, rest } };
}
