import type { Screw } from './screws.ts';

type Thread = Pick<Screw, 'diameter' | 'pitch'>;

/** Cross-section of the core, mm2: `pi/4 d3^2` with `d3 = d - 17/12 H`, `H = sqrt(3)/2 P` (ISO 68-1, memory). */
export function coreArea({ diameter, pitch }: Thread): number {
  return (Math.PI / 4) * (diameter - 1.22687 * pitch) ** 2;
}

/**
 * Area on which the thread of the tapped part is sheared off, mm2: a cylinder on the crests of the screw, of which the
 * tapped thread takes `P/2 + (d - d2) tan 30` in each pitch, `pi d L (1/2 + 0.57735 * 0.64952) = 0.875 pi d L`
 * (FED-STD-H28, memory; nominal diameters).
 *
 * @param engagement L, mm
 */
export function tappedShearArea({ diameter, pitch }: Thread, engagement: number): number {
  const flank = 0.64952 * pitch * Math.tan(Math.PI / 6);
  return (Math.PI * diameter * engagement * (pitch / 2 + flank)) / pitch;
}
