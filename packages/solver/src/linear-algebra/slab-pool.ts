import { Fault } from '../fault/fault.ts';
import { kernelHost, type Patience } from './kernel-host.ts';

/** A memory and the kernel that works in it. */
export interface Slab {
  readonly memory: WebAssembly.Memory;
  readonly exports: WebAssembly.Exports;
  readonly patience: Patience;
}

/**
 * Memories that are used again. Pages that are new to a process cost more than the arithmetic done on them: a third of
 * a factorisation on one thread, two thirds on two.
 */
export interface SlabPool {
  readonly module: WebAssembly.Module;
  /** @throws Fault TOO_LARGE when so many bytes can't be had */
  take(size: number): Slab;
  giveBack(slab: Slab): void;
}

const PAGE = 65536;
/** What 32-bit addresses reach. */
const MOST_PAGES = 65536;
/** Memories kept: a head and its second opinions need three. */
const KEPT = 3;

/** @param shared whether threads share the memories */
export function slabPool(module: WebAssembly.Module, shared: boolean): SlabPool {
  const spares: Slab[] = [];
  return {
    module,
    take(size) {
      const pages = Math.ceil(size / PAGE);
      const slab = fitting(spares, pages) ?? allocate(module, pages, shared);
      const missing = pages - slab.memory.buffer.byteLength / PAGE;
      try {
        if (missing > 0) slab.memory.grow(missing);
      } catch {
        throw tooLarge(size);
      }
      return slab;
    },
    giveBack(slab) {
      if (spares.includes(slab)) return;
      spares.push(slab);
      // The smallest goes.
      if (spares.length > KEPT) spares.splice(spares.indexOf(bySize(spares)[0]), 1);
    },
  };
}

/** The smallest spare that is large enough, or the largest, to be grown; taken from the list. */
function fitting(spares: Slab[], pages: number): Slab | null {
  const sorted = bySize(spares);
  const slab = sorted.find(({ memory }) => memory.buffer.byteLength >= pages * PAGE) ?? sorted.at(-1) ?? null;
  if (slab !== null) spares.splice(spares.indexOf(slab), 1);
  return slab;
}

function bySize(slabs: readonly Slab[]): Slab[] {
  return [...slabs].sort((a, b) => a.memory.buffer.byteLength - b.memory.buffer.byteLength);
}

function allocate(module: WebAssembly.Module, pages: number, shared: boolean): Slab {
  let memory: WebAssembly.Memory;
  try {
    memory = new WebAssembly.Memory(
      shared ? { initial: pages, maximum: MOST_PAGES, shared } : { initial: pages, maximum: MOST_PAGES },
    );
  } catch {
    throw tooLarge(pages * PAGE);
  }
  const patience = { left: Infinity };
  return { memory, exports: new WebAssembly.Instance(module, kernelHost(memory, patience)).exports, patience };
}

function tooLarge(size: number): Fault {
  return new Fault(
    'TOO_LARGE',
    `The factor takes ${(size / 2 ** 30).toFixed(1)} GiB of memory, more than can be had here. Use larger elements.`,
    'mesh',
    { bytes: size },
  );
}
