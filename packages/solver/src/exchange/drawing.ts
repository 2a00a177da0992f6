import { Fault } from '../fault/fault.ts';
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
  const layers = new Map<string, Map<string, number>>();
  return {
    add(layer: string, kind: string): void {
      const counts = layers.get(layer) ?? new Map<string, number>();
      counts.set(kind, (counts.get(kind) ?? 0) + 1);
      layers.set(layer, counts);
    },
    list: (): Preview['layers'] =>
      [...layers].map(([name, counts]) => ({ name, entities: Object.fromEntries(counts) })),
  };
}

/** Curves and words that are read, once blocks are in place. */
export const MOST_CURVES = 100_000;
/** Corners of all of them, and entities that are looked at, those of blocks each time they are placed. */
const [MOST_VERTICES, MOST_VISITS] = [1_000_000, 300_000];

/** Counts what a drawing comes to, and refuses what is too much. */
export function drawingBudget() {
  let [vertices, visits] = [0, 0];
  const refuse = (more: string): never => {
    throw new Fault(
      'TOO_LARGE',
      `The drawing has more than ${more}. Leave out layers, groups or blocks, or explode less.`,
    );
  };
  return {
    visit(): void {
      if (++visits > MOST_VISITS) refuse(`${MOST_VISITS} entities, those of blocks counted each time they are placed`);
    },
    /** @param held curves and words so far */
    add(corners: number, held: number): void {
      vertices += corners;
      if (vertices > MOST_VERTICES) refuse(`${MOST_VERTICES} corners, also of chords on its curves`);
      if (held > MOST_CURVES) refuse(`${MOST_CURVES} curves and words`);
    },
  };
}

/** Letters of a layer's name that are kept. */
const NAME = 200;

/** The name of a layer or block, cut off where nobody reads on. */
export function nameOf(text: string): string {
  return text.slice(0, NAME);
}
