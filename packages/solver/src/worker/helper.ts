import type { CrewWork } from '../linear-algebra/crew.ts';
import { kernelHost } from '../linear-algebra/kernel-host.ts';

/** Kernels that were used last, by the key of their work, so that a solve starts without compiling anything. */
const kernels = new Map<number, WebAssembly.Exports>();
const KEPT = 4;

/** A helper: takes part in the work that it is sent to, in a memory that it shares. Its twin in Node: ../../node/crew.ts. */
addEventListener('message', ({ data }: MessageEvent<CrewWork>) => {
  const { key, module, memory, plan, solve } = data;
  const kernel = kernels.get(key) ?? new WebAssembly.Instance(module, kernelHost(memory)).exports;
  kernels.delete(key);
  kernels.set(key, kernel);
  for (const oldest of kernels.keys()) if (kernels.size > KEPT) kernels.delete(oldest);
  if (solve === 0) (kernel.help as (plan: number) => void)(plan);
  else (kernel.helpSolve as (plan: number, solve: number) => void)(plan, solve);
});
