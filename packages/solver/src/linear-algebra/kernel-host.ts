/** Rest between two looks at a counter, ms. */
const REST = 0.05;

/**
 * What a compiled kernel takes from its host: its memory, and `rest(counter, now)`, which sleeps for a moment unless the
 * 32-bit counter at that byte address is no longer at `now`. A kernel alone in its memory never rests.
 */
export function kernelHost(memory: WebAssembly.Memory) {
  const rest = (counter: number, now: number): void => {
    // A memory may have grown since the last rest; addresses from 2 GB on come in negative.
    Atomics.wait(new Int32Array(memory.buffer), counter >>> 2, now, REST);
  };
  return { env: { memory, rest } };
}
