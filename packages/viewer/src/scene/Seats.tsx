import { useMemo } from 'react';
import { displayRing } from '../buffers/display-ring.ts';
import { seatHeight } from '../buffers/seat-height.ts';
import { seatPlace } from '../state/seat-place.ts';
import { useModel } from '../state/use-workbench.ts';
import { FixedLines } from './FixedLines.tsx';
import type { Palette } from './palette.ts';

/** Pads of the board under the head: outlines on the face of the head there, seen through everything. */
export function Seats({ palette }: { palette: Palette }) {
  const seats = useModel((model) => model.seats);
  const body = useModel((model) => model.body);
  const frame = useModel((model) => model.frame);
  const points = useMemo(() => {
    const flat = (seats ?? []).flatMap((seat) => {
      const { shape, at } = seatPlace(seat);
      const ring = displayRing(shape) ?? [];
      const z = seatHeight({ body, ...(frame && { frame }) }, at);
      return ring.flatMap((corner, i) => [...corner, z, ...ring[(i + 1) % ring.length], z]);
    });
    return Float32Array.from(flat);
  }, [seats, body, frame]);
  return <FixedLines points={points} z={0} colour={palette.hidden} opacity={0.9} onTop order={3} />;
}
