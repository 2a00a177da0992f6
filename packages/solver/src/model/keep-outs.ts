import { distanceToRing, insideRing } from '../geometry/inside.ts';
import type { Point, Ring } from '../geometry/point.ts';
import { shapeRing } from '../geometry/ring.ts';
import type { Shape } from '../geometry/shape.ts';
import type { Fastener, HeadModel } from './head-model.ts';
import { screws } from './screws.ts';

/** Sagitta of a keep-out's arcs, mm. */
const CHORD = 0.005;

/**
 * One sentence for each fastener whose head lies in a keep-out of the board or nearer to it than its clearance. Not
 * faults: the bow is right all the same, but the board designer will object.
 */
export function keepOutRemarks(model: HeadModel): string[] {
  return (model.keepOuts ?? []).flatMap(({ name, shape, clearance = 0 }, i) => {
    const ring = keepOutRing(shape, i);
    return model.fasteners.flatMap((fastener) => {
      const gap = distanceOutside(ring, fastener.at) - headDiameter(fastener) / 2;
      if (gap >= clearance) return [];
      return gap < 0
        ? [`Fastener ${fastener.name} reaches ${(-gap).toFixed(2)} mm into keep-out "${name}".`]
        : [
            `Fastener ${fastener.name} is ${gap.toFixed(2)} mm from keep-out "${name}", which asks for ${clearance} mm clearance.`,
          ];
    });
  });
}

/** Ring of the keep-out of that index. @throws Fault BAD_SHAPE */
export function keepOutRing(shape: Shape, index: number): Ring {
  return shapeRing(shape, { chord: CHORD, path: `keepOuts.${index}.shape` });
}

/** Distance of a point from a ring, mm; negative inside. */
export function distanceOutside(ring: Ring, [x, y]: Point): number {
  return distanceToRing(ring, x, y) * (insideRing(ring, x, y) ? -1 : 1);
}

/** Diameter of the screw head, or of what bears where that is more, mm. */
export function headDiameter({ screw, bearing }: Fastener): number {
  const size = screw !== undefined && Object.hasOwn(screws, screw) ? screws[screw].head : 0;
  return Math.max(size, bearing ?? 0);
}
