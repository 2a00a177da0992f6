/** Wall time by step, ms. */
export interface Stopwatch {
  readonly laps: Record<string, number>;
  /** Adds the time since the lap before to the named step. */
  lap(step: string): void;
}

/** A stopwatch that has just been started. */
export function stopwatch(): Stopwatch {
  const laps: Record<string, number> = {};
  let last = performance.now();
  return {
    laps,
    lap(step) {
      const now = performance.now();
      laps[step] = (laps[step] ?? 0) + now - last;
      last = now;
    },
  };
}
