import { Fault } from '../fault/fault.ts';
import { type Curve, reversed, type Vertex } from './curve.ts';
import type { Dropped } from './reading.ts';

/** A closed curve, from one entity or joined from several. */
export interface Loop {
  readonly vertices: readonly Vertex[];
  readonly layer: string;
  /** Line of its first entity. */
  readonly line: number;
}

export interface Loops {
  readonly loops: readonly Loop[];
  readonly guesses: readonly string[];
  readonly dropped: readonly Dropped[];
}

/** Ends this near, mm, meet. */
const MEET = 1e-6;
/** Ends that meet in one place, at most: which of them go together is anybody's guess. */
const MOST_ENDS = 2000;

interface Strand {
  vertices: Vertex[];
  readonly line: number;
}

/**
 * Closed curves of one layer: open ones are joined end to end, nearest first, across gaps up to a limit.
 *
 * @param gap largest gap that is closed, mm
 * @throws Fault TOO_LARGE when thousands of curves end in one place
 */
export function closeLoops(curves: readonly Curve[], gap: number): Loops {
  const guesses: string[] = [];
  const dropped: Dropped[] = [];
  const single = withoutTwins(curves, dropped);
  const loops: Loop[] = single.filter(({ closed }) => closed);
  const open = single.filter(({ closed }) => !closed);
  const free = new Set(open);
  const near = endIndex(open, Math.max(gap, MEET));
  for (const curve of open) {
    if (!free.delete(curve)) continue;
    const strand: Strand = { vertices: [...curve.vertices], line: curve.line };
    let closed = grow(strand);
    if (!closed) {
      strand.vertices = reversed(strand.vertices, false);
      closed = grow(strand);
    }
    if (closed) loops.push({ vertices: strand.vertices.slice(0, -1), layer: curve.layer, line: strand.line });
    else {
      const [a, b] = [strand.vertices[0], strand.vertices[strand.vertices.length - 1]];
      const apart = Math.hypot(a.x - b.x, a.y - b.y);
      dropped.push({
        line: strand.line,
        reason: `the curve on layer "${curve.layer}" is not closed: it ends at ${at(a)} and ${at(b)}, ${Number(apart.toPrecision(3))} mm apart; close it${apart < 1 ? `, or allow gaps up to ${Number((apart * 1.01).toPrecision(2))} mm` : ''}`,
      });
    }
  }
  return { loops, guesses, dropped };

  /** Goes on from the last vertex until the strand comes back to its first; false where it stops before. */
  function grow(strand: Strand): boolean {
    for (;;) {
      const [first, end] = [strand.vertices[0], strand.vertices[strand.vertices.length - 1]];
      const home = Math.hypot(first.x - end.x, first.y - end.y);
      const next = near(end, free);
      if (strand.vertices.length > 2 && home <= Math.max(gap, MEET) && (next === null || home <= next.distance)) {
        heal(home, end);
        return true;
      }
      if (next === null) return false;
      free.delete(next.curve);
      heal(next.distance, end);
      const further = next.atStart ? next.curve.vertices : reversed(next.curve.vertices, false);
      strand.vertices.pop();
      for (const vertex of further) strand.vertices.push(vertex);
    }
  }

  function heal(distance: number, place: Vertex): void {
    if (distance > MEET) guesses.push(`A gap of ${Number(distance.toPrecision(3))} mm at ${at(place)} was closed.`);
  }
}

function at({ x, y }: Pick<Vertex, 'x' | 'y'>): string {
  return `(${Number(x.toFixed(4))}, ${Number(y.toFixed(4))})`;
}

/** Curves drawn once: one on top of another would be followed to and fro. */
function withoutTwins(curves: readonly Curve[], dropped: Dropped[]): Curve[] {
  const seen = new Map<string, number>();
  return curves.filter(({ vertices, closed, line, layer }) => {
    const text = (list: readonly Vertex[]) =>
      list.map(({ x, y, bulge }) => `${Math.round(x / MEET)} ${Math.round(y / MEET)} ${bulge.toFixed(6)}`).join(';');
    const keys = closed ? [text(vertices)] : [text(vertices), text(reversed(vertices, closed))];
    const first = keys.map((key) => seen.get(key)).find((found) => found !== undefined);
    if (first === undefined) seen.set(keys[0], line);
    else dropped.push({ line, reason: `the curve on layer "${layer}" is the same as that on line ${first}` });
    return first === undefined;
  });
}

interface End {
  readonly curve: Curve;
  readonly atStart: boolean;
  readonly x: number;
  readonly y: number;
}

/** Finds the nearest free end within reach of a place. */
function endIndex(curves: readonly Curve[], reach: number) {
  const cells = new Map<string, End[]>();
  const cell = (value: number) => Math.floor(value / reach);
  for (const curve of curves)
    for (const atStart of [true, false]) {
      const { x, y } = atStart ? curve.vertices[0] : curve.vertices[curve.vertices.length - 1];
      const key = `${cell(x)} ${cell(y)}`;
      const held = cells.get(key);
      const end = { curve, atStart, x, y };
      if (held === undefined) cells.set(key, [end]);
      else if (held.push(end) > MOST_ENDS)
        throw new Fault(
          'TOO_LARGE',
          `More than ${MOST_ENDS} curves of layer "${curve.layer}" end at ${at(end)}, so which go together cannot be told. Choose other layers, or draw closed curves.`,
          '',
          { line: curve.line },
        );
    }
  return ({ x, y }: Vertex, free: ReadonlySet<Curve>): (End & { readonly distance: number }) | null => {
    let best: (End & { readonly distance: number }) | null = null;
    for (let i = cell(x) - 1; i <= cell(x) + 1; i++)
      for (let j = cell(y) - 1; j <= cell(y) + 1; j++)
        for (const end of cells.get(`${i} ${j}`) ?? []) {
          const distance = Math.hypot(end.x - x, end.y - y);
          if (distance <= reach && free.has(end.curve) && (best === null || distance < best.distance))
            best = { ...end, distance };
        }
    return best;
  };
}
