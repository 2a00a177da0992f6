import type { Point, Ring } from '@flathead/solver';
import { useMemo } from 'react';
import { displayRing } from '../buffers/display-ring.ts';
import { hatchStrokes } from '../buffers/hatch.ts';
import { seatHeight } from '../buffers/seat-height.ts';
import { useModel } from '../state/use-workbench.ts';
import { FixedLines } from './FixedLines.tsx';
import type { Palette } from './palette.ts';

/** Spacing of the hatch, mm. */
const HATCH = 1.2;

/** Areas that the board needs for itself: hatched outlines on the face of the head there, seen through everything. */
export function KeepOuts({ palette }: { palette: Palette }) {
  const keepOuts = useModel((model) => model.keepOuts);
  const body = useModel((model) => model.body);
  const frame = useModel((model) => model.frame);
  const points = useMemo(() => {
    const flat = (keepOuts ?? []).flatMap(({ shape }) => {
      const ring = displayRing(shape) ?? [];
      const z = seatHeight({ body, ...(frame && { frame }) }, middle(ring));
      const edges = ring.flatMap((corner, i) => [corner, ring[(i + 1) % ring.length]]);
      return [...edges, ...hatchStrokes(ring, HATCH)].flatMap(([x, y]) => [x, y, z]);
    });
    return Float32Array.from(flat);
  }, [keepOuts, body, frame]);
  return <FixedLines points={points} z={0} colour={palette.keepOut} opacity={0.7} onTop order={3} />;
}

function middle(ring: Ring): Point {
  const mean = (axis: 0 | 1): number => ring.reduce((sum, corner) => sum + corner[axis], 0) / Math.max(1, ring.length);
  return [mean(0), mean(1)];
}
