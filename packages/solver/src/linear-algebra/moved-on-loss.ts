import type { FrontMemory } from './front-memory.ts';
import type { Symbolic } from './symbolic.ts';

/**
 * A shared memory whose factor goes on in a memory of its own once a helper is lost in a solve: what is taken for dead
 * may yet wake up and write into the memory that it knows.
 *
 * @param alone opens a memory that no helper sees
 */
export function movedOnLoss(shared: FrontMemory, { factorSize }: Symbolic, alone: () => FrontMemory): FrontMemory {
  let memory = shared;
  const half = (done: boolean): boolean => {
    if (done) return true;
    const own = alone();
    own.value.set(memory.value.subarray(0, factorSize));
    memory = own;
    return false;
  };
  return {
    get value() {
      return memory.value;
    },
    scratch: shared.scratch,
    apart: shared.apart,
    get vectors() {
      return memory.vectors;
    },
    factor: (matrix, stopped) => memory.factor(matrix, stopped),
    forward: () => half(memory.forward()),
    backward: (count) => half(memory.backward(count)),
    forwardPivot: (pivot, width, y) => memory.forwardPivot(pivot, width, y),
    forwardBelow: (below, width, rows, y, t) => memory.forwardBelow(below, width, rows, y, t),
    release: () => memory.release(),
  };
}
