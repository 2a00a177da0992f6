import type { Crew } from './crew.ts';
import { DONE, type FrontKernel, type FrontMemory, LOST, STOPPED, scratchRoom } from './front-memory.ts';
import { NOT_FAILED, PLAN, tableSize, writeTable } from './front-table.ts';
import { FUSED, FUSED_SHARED, SIMD, SIMD_SHARED } from './kernel-binary.ts';
import { HelperLost, renew } from './kernel-host.ts';
import { movedOnLoss } from './moved-on-loss.ts';
import { plainKernel } from './plain-kernel.ts';
import { type SlabPool, slabPool } from './slab-pool.ts';
import type { Symbolic } from './symbolic.ts';

/** What ../../kernel/index.ts exports; addresses in bytes, sizes in 3x3 blocks. */
interface Exports {
  readonly join: (plan: number) => number;
  readonly takeTask: (plan: number, worker: number) => number;
  readonly closeTasks: (plan: number) => number;
  readonly shareTop: (plan: number, k: number, worker: number, workers: number) => number;
  readonly forward: (plan: number, y: number) => void;
  readonly backward: (plan: number, y: number, vectors: number, apart: number) => void;
  readonly forwardPivot: (pivot: number, width: number, y: number) => void;
  readonly forwardBelow: (below: number, width: number, rows: number, y: number, t: number) => void;
}

const NUMBER = Float64Array.BYTES_PER_ELEMENT;

/** Every kernel that this engine can run, fastest first; the last is plain TypeScript and always there. */
export function availableKernels(): readonly FrontKernel[] {
  return [compiled('fused', FUSED, FUSED_SHARED), compiled('simd', SIMD, SIMD_SHARED), plainKernel].filter(
    (kernel) => kernel !== null,
  );
}

/** Crews that have lost a helper. */
const broken = new WeakSet<Crew>();

/** Memories opened so far. */
let opened = 0;

let fastest: FrontKernel | null = null;

/** The fastest kernel that this engine can run. */
export function fastestKernel(): FrontKernel {
  fastest ??= availableKernels()[0];
  return fastest;
}

/** The kernel in a WebAssembly binary, or `null` where the engine lacks WebAssembly or an instruction of it. */
function compiled(name: string, own: string, shared: string): FrontKernel | null {
  if (typeof WebAssembly === 'undefined') return null;
  const binary = bytes(own);
  if (!WebAssembly.validate(binary)) return null;
  const alone = slabPool(new WebAssembly.Module(binary), false);
  let together: SlabPool | null = null;
  return {
    name,
    open(symbolic, crew) {
      // Without fronts above the tasks the whole is too small to be worth a call.
      if (crew === null || crew.helpers === 0 || broken.has(crew) || symbolic.schedule.top.length === 0)
        return open(alone, symbolic, null);
      together ??= slabPool(new WebAssembly.Module(bytes(shared)), true);
      return movedOnLoss(open(together, symbolic, crew), symbolic, () => open(alone, symbolic, null));
    },
  };
}

function bytes(base64: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
}

function open(pool: SlabPool, symbolic: Symbolic, crew: Crew | null): FrontMemory {
  const { schedule, factorSize, entries } = symbolic;
  const workers = crew === null ? 1 : 1 + crew.helpers;
  // The matrix lies behind factor and updates, the table behind the matrix.
  const { size, vectors, apart } = scratchRoom(symbolic, workers);
  const blocks = factorSize + size;
  const numbers = blocks + 9 * entries.block.length;
  const slab = pool.take(NUMBER * numbers + 4 * tableSize(symbolic));
  const { memory } = slab;
  const kernel = slab.exports as unknown as Exports;
  const value = new Float64Array(memory.buffer, 0, numbers);
  const words = new Uint32Array(memory.buffer);
  const plan = writeTable(symbolic, words, 2 * numbers, blocks, workers);
  const stop = plan / 4 + PLAN.stop;
  const key = ++opened;
  let calls = 0;
  let solves = 0;
  /** Calls the helpers to a run, in which they are waited for as long as in any other. */
  const call = (solve: number) => {
    if (crew === null || broken.has(crew)) return;
    renew(slab.patience, crew.patience);
    calls++;
    crew.call({ key, module: pool.module, memory, plan, solve });
  };

  /** Runs the plan; false when it ended early. */
  const run = (stopped: () => boolean): boolean => {
    const worker = kernel.join(plan);
    call(0);
    while (kernel.takeTask(plan, worker) !== 0) if (stopped()) return false;
    const crewSize = kernel.closeTasks(plan);
    for (let k = 0; k < schedule.top.length && crewSize > 0; k++)
      if (stopped() || kernel.shareTop(plan, k, worker, crewSize) === 0) return false;
    return true;
  };

  /** What an action comes to, or that a helper was lost in it. */
  const attempt = <T>(action: () => T): T | typeof LOST => {
    try {
      return action();
    } catch (thrown) {
      if (crew === null || !(thrown instanceof HelperLost)) throw thrown;
      broken.add(crew);
      return LOST;
    }
  };

  /** Half of a solve; false when a helper was lost in it. */
  const half = (act: () => void): boolean => {
    if (crew?.solves) call(++solves);
    return attempt(act) !== LOST;
  };

  // Addresses reach 4 GB: as 32-bit integers they may come out negative, which WebAssembly reads as the same bits.
  return {
    value,
    scratch: factorSize,
    vectors,
    apart,
    factor(matrix, stopped) {
      value.set(matrix.value, blocks);
      const ended = attempt(() => (run(stopped) ? DONE : STOPPED));
      Atomics.store(words, stop, 1);
      const failed = words[plan / 4 + PLAN.failed];
      return failed === NOT_FAILED || ended === LOST ? ended : failed;
    },
    forward: () => half(() => kernel.forward(plan, factorSize * NUMBER)),
    backward: (count) => half(() => kernel.backward(plan, factorSize * NUMBER, count, apart * NUMBER)),
    forwardPivot: (pivot, width, y) => kernel.forwardPivot(pivot * NUMBER, width, y * NUMBER),
    forwardBelow: (below, width, rows, y, t) =>
      kernel.forwardBelow(below * NUMBER, width, rows, y * NUMBER, t * NUMBER),
    release() {
      // A helper that is still on its way would meet another plan.
      if (crew === null || Atomics.load(words, plan / 4 + PLAN.gone) === calls * crew.helpers) pool.giveBack(slab);
    },
  };
}
