import type { Layer, Section } from '../src/section/section.ts';
import type { PlateModel } from './check.ts';

/** Strips of ceramic without Poisson effect, as beams are. Lengths mm. */
export const base = { E: 3.2e5, nu: 0, thickness: 3 };
export const [LENGTH, WIDTH] = [80, 4];

export const strip = (length: number, width = WIDTH) => ({ rectangle: [length, width] as [number, number] });

/** Both short ends of a strip, simply supported. */
export const onEnds = (length: number, width: number): PlateModel['plate']['edges'] =>
  [-length / 2, length / 2].map((x) => ({
    along: { from: [x, -width / 2], to: [x, width / 2] },
    held: 'simple' as const,
  }));

/** The layer of the strip itself, about z = 0. */
export const own: Layer = { E: base.E, nu: base.nu, thickness: base.thickness, bottom: -base.thickness / 2 };
/** A layer on top of it. */
export const onTop = (E: number, thickness: number): Layer => ({ E, nu: 0, thickness, bottom: base.thickness / 2 });
export const layered = (layers: readonly Layer[], join: 'bonded' | 'sliding' = 'bonded'): Section => ({
  layers: [...layers],
  join,
});

/** EI of two bonded bars about their common neutral axis, rectangle on rectangle. */
export function composite(E1: number, b1: number, t1: number, E2: number, b2: number, t2: number): number {
  const [a1, a2] = [E1 * b1 * t1, E2 * b2 * t2];
  const e = (t1 + t2) / 2;
  return (a1 * t1 ** 2 + a2 * t2 ** 2) / 12 + (a1 * a2 * e ** 2) / (a1 + a2);
}

/** Deflection in the middle of a simply supported beam under an even load q, stiffness EI2 over its middle `rib`, else EI1. */
export function steppedBeam(q: number, EI1: number, EI2: number, rib: number): number {
  // Integral from the end of M x/EI: virtual unit force in the middle, by symmetry (Mohr; exact).
  const part = (x: number) => (q * LENGTH * x ** 3) / 6 - (q * x ** 4) / 8;
  const at = (LENGTH - rib) / 2;
  return part(at) / EI1 + (part(LENGTH / 2) - part(at)) / EI2;
}
