import type { DenseKernel, FrontMemory } from './dense-kernel.ts';
import { FUSED, SIMD } from './kernel-binary.ts';
import { plainKernel } from './plain-kernel.ts';

/** A function of the compiled kernel; addresses in bytes, sizes in 3x3 blocks. */
type Compiled = (...sizes: number[]) => number;

const PAGE = 65536;
const NUMBER = Float64Array.BYTES_PER_ELEMENT;

/** Every dense kernel that this engine can run, fastest first; the last is plain TypeScript and always there. */
export function availableKernels(): readonly DenseKernel[] {
  return [compiled('fused', FUSED), compiled('simd', SIMD), plainKernel].filter((kernel) => kernel !== null);
}

let fastest: DenseKernel | null = null;

/** The fastest dense kernel that this engine can run. */
export function fastestKernel(): DenseKernel {
  fastest ??= availableKernels()[0];
  return fastest;
}

/** The kernel in a WebAssembly binary, or `null` where the engine lacks WebAssembly or an instruction of it. */
function compiled(name: string, base64: string): DenseKernel | null {
  if (typeof WebAssembly === 'undefined') return null;
  const binary = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
  if (!WebAssembly.validate(binary)) return null;
  const module = new WebAssembly.Module(binary);
  return { name, open: (size) => open(module, size) };
}

function open(module: WebAssembly.Module, size: number): FrontMemory {
  const memory = new WebAssembly.Memory({ initial: Math.ceil((size * NUMBER) / PAGE) });
  const { exports } = new WebAssembly.Instance(module, { env: { memory } });
  const call = (name: keyof FrontMemory): Compiled => exports[name] as Compiled;
  const factorPivot = call('factorPivot');
  const solveBelow = call('solveBelow');
  const subtractProduct = call('subtractProduct');
  const forwardPivot = call('forwardPivot');
  const forwardBelow = call('forwardBelow');
  const backwardBelow = call('backwardBelow');
  const backwardPivot = call('backwardPivot');
  // Addresses reach 4 GB: as 32-bit integers they may come out negative, which WebAssembly reads as the same bits.
  return {
    value: new Float64Array(memory.buffer),
    factorPivot: (pivot, width) => factorPivot(pivot * NUMBER, width),
    solveBelow: (pivot, width, below, rows) => void solveBelow(pivot * NUMBER, width, below * NUMBER, rows),
    subtractProduct: (below, width, rows, update) => void subtractProduct(below * NUMBER, width, rows, update * NUMBER),
    forwardPivot: (pivot, width, y) => void forwardPivot(pivot * NUMBER, width, y * NUMBER),
    forwardBelow: (below, width, rows, y, t) => void forwardBelow(below * NUMBER, width, rows, y * NUMBER, t * NUMBER),
    backwardBelow: (below, width, rows, t, y) =>
      void backwardBelow(below * NUMBER, width, rows, t * NUMBER, y * NUMBER),
    backwardPivot: (pivot, width, y) => void backwardPivot(pivot * NUMBER, width, y * NUMBER),
  };
}
