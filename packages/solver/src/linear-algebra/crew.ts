/** Helpers on other threads that wait to share a factorisation and its solves. */
export interface Crew {
  /** How many there are. */
  readonly helpers: number;
  /** Whether they help with solves as well: not where the page that shows the result needs their processor. */
  readonly solves: boolean;
  /** Rests of the leading thread in one run after which a helper counts as dead; some half a minute's if left out. */
  readonly patience?: number;
  /** Sends them to a piece of work in a shared memory. Returns at once: who comes late finds nothing left to do. */
  call(work: CrewWork): void;
}

export interface CrewWork {
  /** The same for all work in one memory with one plan. */
  readonly key: number;
  /** Compiled kernel for shared memory. */
  readonly module: WebAssembly.Module;
  readonly memory: WebAssembly.Memory;
  /** Address of the plan, bytes. */
  readonly plan: number;
  /** Number of the solve with this plan, from 1 on; 0 for the factorisation. */
  readonly solve: number;
}
