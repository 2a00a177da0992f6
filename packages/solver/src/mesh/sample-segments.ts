import { Fault } from '../fault/fault.ts';
import type { Arrangement } from './arrangement.ts';
import type { SizeField } from './size-field.ts';

/** Segments of an arrangement cut into pieces of about the wanted size. */
export interface SampledSegments {
  /** `[nNodes]` the vertices of the arrangement first. */
  readonly x: Float64Array;
  /** `[nNodes]` */
  readonly y: Float64Array;
  /** `[nNodes]` segment that the node was put on, -1 for vertices. */
  readonly onSegment: Int32Array;
  /** `[2 * nPieces]` node pairs, in the sense of their segment. */
  readonly pieces: Uint32Array;
  /** `[nPieces]` */
  readonly pieceSegment: Int32Array;
}

/** Points at which the size is read along a segment. */
const READINGS = 16;

/**
 * Cuts every segment into the whole number of pieces nearest to the integral of 1 / size along it, each with the same
 * share of that integral.
 *
 * @throws Fault TOO_LARGE when that asks for more than `maxNodes` nodes
 */
export function sampleSegments(arrangement: Arrangement, size: SizeField, maxNodes: number): SampledSegments {
  const { x, y, segments } = arrangement;
  const xs = Array.from(x);
  const ys = Array.from(y);
  const onSegment: number[] = xs.map(() => -1);
  const pieces: number[] = [];
  const pieceSegment: number[] = [];
  const total = new Float64Array(READINGS + 1);
  for (let s = 0; 2 * s < segments.length; s++) {
    const a = segments[2 * s];
    const b = segments[2 * s + 1];
    const [dx, dy] = [x[b] - x[a], y[b] - y[a]];
    const step = Math.hypot(dx, dy) / READINGS;
    for (let i = 0; i < READINGS; i++) {
      const t = (i + 0.5) / READINGS;
      total[i + 1] = total[i] + step / size(x[a] + t * dx, y[a] + t * dy);
    }
    const count = Math.max(1, Math.round(total[READINGS]));
    if (!(xs.length + count <= maxNodes)) throw tooManyNodes(xs.length + count, maxNodes, [x[a], y[a]]);
    let last = a;
    let reading = 0;
    for (let k = 1; k <= count; k++) {
      let next = b;
      if (k < count) {
        const share = (total[READINGS] * k) / count;
        while (total[reading + 1] < share) reading++;
        const t = (reading + (share - total[reading]) / (total[reading + 1] - total[reading])) / READINGS;
        next = xs.push(x[a] + t * dx) - 1;
        ys.push(y[a] + t * dy);
        onSegment.push(s);
      }
      pieces.push(last, next);
      pieceSegment.push(s);
      last = next;
    }
  }
  return {
    x: Float64Array.from(xs),
    y: Float64Array.from(ys),
    onSegment: Int32Array.from(onSegment),
    pieces: Uint32Array.from(pieces),
    pieceSegment: Int32Array.from(pieceSegment),
  };
}

export function tooManyNodes(nodes: number, maxNodes: number, at: readonly [number, number]): Fault {
  return new Fault(
    'TOO_LARGE',
    `The mesh would need ${nodes === Infinity ? 'far more' : `about ${Math.round(nodes)}`} nodes, more than the ${maxNodes} allowed, among them many near [${at.map((c) => Number(c.toPrecision(5)))}]; ask for larger elements, or widen or remove the finest gap or feature there.`,
    '',
    {
      where: at,
      value: nodes,
      expected: `at most ${maxNodes} nodes`,
      remedy: 'larger elements or fewer fine features',
    },
  );
}
