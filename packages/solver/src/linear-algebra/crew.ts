/** Helpers on other threads that wait to share a factorisation. */
export interface Crew {
  /** How many there are. */
  readonly helpers: number;
  /**
   * Sends them to a plan in a shared memory. Returns at once: who comes late finds nothing left to do.
   *
   * @param module compiled kernel for shared memory
   * @param plan address of the plan, bytes
   */
  call(module: WebAssembly.Module, memory: WebAssembly.Memory, plan: number): void;
}
