import type { Point } from '../src/geometry/point.ts';
import type { PlateProblem } from '../src/plate/plate-problem.ts';
import type { PlateCheck, PlateModel, PlateReading } from './check.ts';
import { type Acceptance, deflections, type Evidence, moments } from './evidence.ts';

/** Ceramic, MPa; Poisson's ratio is that of the source. */
export const E = 320_000;
/** Short side, side of a rhombus, or radius, mm. */
export const a = 64;
export const thickness = 2.5;
/** MPa, for loads given as pressure. */
export const q = -0.0175;
/** N, for point loads. */
export const P = 83;

export const rigidity = (nu = 0.3, t = thickness): number => (E * t ** 3) / (12 * (1 - nu * nu));
/** kappa G t, N/mm. */
export const shearRigidity = (t: number, nu = 0.3): number => ((5 / 6) * E * t) / (2 * (1 + nu));

export const everywhere: PlateProblem['loads'] = [{ over: 'all', pressure: q }];
export const atCentre: PlateProblem['loads'] = [{ at: [0, 0], force: P }];
export const simple: PlateProblem['edges'] = [{ along: 'all', held: 'simple' }];
export const clamped: PlateProblem['edges'] = [{ along: 'all', held: 'clamped' }];

/** Element size over the square root of the area: about 5,500 nodes, 16,500 dofs. */
const FINENESS = 0.0145;
export const sizeFor = (area: number): number => FINENESS * Math.sqrt(area);

export type Rest = Partial<Omit<PlateProblem, 'plate' | 'outline' | 'mesh' | 'report'>>;

/** A plate of the usual ceramic. */
export function plateOf(outline: PlateProblem['outline'], rest: Rest, nu = 0.3): PlateModel['plate'] {
  return { plate: 1, outline, section: { E, nu, thickness }, ...rest };
}

/** Of sides a along x and `ratio * a` along y about the origin. */
export const rectangle = (ratio: number, rest: Rest, nu = 0.3): PlateModel['plate'] =>
  plateOf({ rectangle: [a, ratio * a] }, rest, nu);

export function posed(
  name: string,
  plate: PlateModel['plate'],
  size: number,
  checks: readonly PlateCheck[],
): PlateModel {
  return { kind: 'plate', name, plate, size, checks };
}

/** The same for a rectangle of sides a and `ratio * a` on the usual mesh. */
export const onRectangle = (name: string, ratio: number, rest: Rest, checks: readonly PlateCheck[], nu = 0.3) =>
  posed(name, rectangle(ratio, rest, nu), sizeFor(ratio * a * a), checks);

export const middle: Point = [0, 0];

/** Checks of a plate whose deflections and moments are told in units of the source. */
export interface Units {
  readonly w: (where: string, at: Point, expected: number, from: Evidence) => PlateCheck;
  readonly m: (which: 'mxx' | 'myy' | 'mxy', where: string, at: Point, expected: number, from: Evidence) => PlateCheck;
}

export function units(ofW: string, w: number, ofM: string, m: number): Units {
  return {
    w: (where, at, expected, from) =>
      check(`w ${where}`, ofW, w, expected, from, { of: 'w', at: [...at] as [number, number] }, deflections),
    m: (which, where, at, expected, from) =>
      check(`${which} ${where}`, ofM, m, expected, from, { of: which, at: [...at] as [number, number] }, moments),
  };
}

/** A check of anything; `usual` is accepted where the evidence names no tolerance of its own. */
export function check<Reading = PlateReading>(
  quantity: string,
  unit: string,
  scale: number,
  expected: number,
  { source, basis, accepted }: Evidence,
  read: Reading,
  usual: Acceptance,
) {
  return { quantity, unit, scale, expected, ...(accepted ?? usual), source, basis, read };
}

/** `q a^4/D` and `q a^2`. */
export const underPressure = (nu = 0.3): Units => units('q a^4/D', (q * a ** 4) / rigidity(nu), 'q a^2', q * a ** 2);
/** `P a^2/D` and `P`. */
export const underPoint = (nu = 0.3): Units => units('P a^2/D', (P * a ** 2) / rigidity(nu), 'P', P);
