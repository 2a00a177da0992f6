/** Something of a file that was not taken. */
export interface Dropped {
  /** Line of the file, from 1; 0 where it belongs to none. */
  readonly line: number;
  /** What it was, why it was left out, and what to do about it. */
  readonly reason: string;
}

/** The box around what was read, mm. */
export interface Extents {
  readonly min: readonly [number, number];
  readonly max: readonly [number, number];
}

/** What a person looks at before a reading is taken. Plain data. */
export interface Preview {
  /** How many of what: `{ probes: 3360, sites: 10 }`. */
  readonly counts: Readonly<Record<string, number>>;
  /** `null` where nothing was read. */
  readonly extents: Extents | null;
  /** Layers of a drawing with the kinds and numbers of their entities; empty for lists. */
  readonly layers: readonly { readonly name: string; readonly entities: Readonly<Record<string, number>> }[];
  /** Unit of lengths in the file, and whether the file says so, the caller does, or it is a guess. */
  readonly units: { readonly length: string; readonly basis: 'file' | 'given' | 'guessed' };
  /** One sentence for each thing that the file leaves open and that was decided. */
  readonly guesses: readonly string[];
  /** Everything that was left out. */
  readonly dropped: readonly Dropped[];
}

/** What a reader makes of a file. Nothing is taken into a head yet. */
export interface Reading<T> {
  readonly read: T;
  readonly preview: Preview;
}

/** A head with a reading in it, and what to know about that: one sentence each. */
export interface Taken<M> {
  readonly model: M;
  readonly notes: readonly string[];
}

/** Box around points; `null` without any. */
export function extentsOf(points: Iterable<readonly [number, number, ...unknown[]]>): Extents | null {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    [x0, x1] = [Math.min(x0, x), Math.max(x1, x)];
    [y0, y1] = [Math.min(y0, y), Math.max(y1, y)];
  }
  return x0 > x1 ? null : { min: [x0, y0], max: [x1, y1] };
}

/** A length without the dust of its arithmetic: to 1e-9 mm. */
export function tidy(value: number): number {
  return Number(value.toFixed(9)) + 0;
}
