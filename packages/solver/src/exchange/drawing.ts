import type { Curve } from './curve.ts';
import type { Dropped, Preview } from './reading.ts';

/** A word on a drawing, and where it stands, mm. */
export interface Label {
  readonly text: string;
  readonly at: readonly [number, number];
  readonly layer: string;
}

/** Curves of a drawing of any format, mm. */
export interface Strokes extends Pick<Preview, 'units' | 'layers'> {
  readonly curves: readonly Curve[];
  readonly labels: readonly Label[];
  /** Layers that the drawing does not show: read only where they are named. */
  readonly hidden: ReadonlySet<string>;
  readonly guesses: readonly string[];
  readonly dropped: readonly Dropped[];
}

/** Counts of entities by layer, in the order of their first. */
export function layerCounts() {
  const layers = new Map<string, Record<string, number>>();
  return {
    add(layer: string, kind: string): void {
      const counts = layers.get(layer) ?? {};
      counts[kind] = (counts[kind] ?? 0) + 1;
      layers.set(layer, counts);
    },
    list: (): Preview['layers'] => [...layers].map(([name, entities]) => ({ name, entities })),
  };
}

/** Curves and words that are read, once blocks are in place. */
export const MOST_CURVES = 100_000;
