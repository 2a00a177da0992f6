import { Fault } from '../fault/fault.ts';
import { drilledCompliance, requireTabulated } from './drilled.ts';
import { type HoleArray, holeFraction } from './hole-array.ts';
import { shearModulus } from './isotropic.ts';

/** A layer of a drilled plate through which the holes are straight. */
interface DrilledLayer {
  readonly holes: HoleArray;
  readonly bottom: number;
  readonly thickness: number;
}

/** Bending stiffness along rows of holes, N mm, and transverse shear stiffness, N/mm. */
export interface DrilledStiffness {
  readonly Q11: number;
  readonly Q12: number;
  readonly Q33: number;
  readonly shear: number;
}

/**
 * Makes sure that effective constants are known for an array of holes, steps included.
 *
 * @param thickness of the plate, mm
 * @param path of the array in the model
 * @throws Fault OUT_OF_RANGE
 */
export function requireDrillable(holes: HoleArray, thickness: number, path: string): void {
  requireTabulated(holes, path);
  const { counterbore, diameter } = holes;
  if (counterbore === undefined) return;
  const step = `${path}.counterbore`;
  if (!(counterbore.diameter > diameter))
    throw new Fault(
      'OUT_OF_RANGE',
      `The counterbore of ${path} is ${counterbore.diameter} mm wide, no more than its holes of ${diameter} mm. Make it wider, or leave it out.`,
      `${step}.diameter`,
      { value: counterbore.diameter, expected: `more than ${diameter} mm` },
    );
  if (!(counterbore.depth < thickness))
    throw new Fault(
      'OUT_OF_RANGE',
      `The counterbore of ${path} is ${counterbore.depth} mm deep in a plate of ${thickness} mm and leaves nothing of the holes. Make it shallower, or give its diameter as that of the holes.`,
      `${step}.depth`,
      { value: counterbore.depth, expected: `less than ${thickness} mm` },
    );
  requireTabulated({ ...holes, diameter: counterbore.diameter }, step);
}

/**
 * Stiffness of a plate with counterbored holes as a laminate of its layers (classical laminate theory):
 * `A = sum Q t`, `B = sum Q t z`, `D = sum Q (t^3/12 + t z^2)` with the effective stiffness Q of each layer in its plane,
 * and bending about the laminate's own neutral surface, `D* = D - B A^-1 B`.
 *
 * An estimate: it lets the field stretch as bending asks for. The body around it holds that back in part; the truth
 * lies between D* and D, and D* errs on the side of more bow. Each layer counts as several pitches thick.
 *
 * Layers of one array share their axes, so that all matrices are of one cubic kind: scalars for equal strains along both
 * rows, for opposite ones and for shear take the place of matrices. Transverse shear follows from the shear stress
 * that balances bending along a row, `1/S = integral of tau^2/G dz`; 5/6 G t for a single layer.
 *
 * @throws Fault OUT_OF_RANGE
 */
export function steppedStiffness(
  solid: { readonly E: number; readonly nu: number; readonly thickness: number; readonly holes: HoleArray },
  path: string,
): DrilledStiffness {
  const { E, nu, thickness, holes } = solid;
  requireDrillable(holes, thickness, path);
  const layers = holeLayers(holes, thickness).map((layer) => {
    const { S11, S12, S66 } = drilledCompliance(layer.holes, nu, path);
    const phi = holeFraction(layer.holes);
    return {
      ...layer,
      equal: E / (S11 + S12),
      opposite: E / (S11 - S12),
      shear: E / S66,
      G: (shearModulus(E, nu) * (1 - phi)) / (1 + phi),
    };
  });
  const about = (kind: 'equal' | 'opposite' | 'shear'): number => {
    let [A, B, D] = [0, 0, 0];
    for (const { [kind]: Q, bottom, thickness: t } of layers) {
      const z = bottom + t / 2;
      A += Q * t;
      B += Q * t * z;
      D += Q * (t ** 3 / 12 + t * z * z);
    }
    return D - (B * B) / A;
  };
  const [equal, opposite] = [about('equal'), about('opposite')];
  return {
    Q11: (equal + opposite) / 2,
    Q12: (equal - opposite) / 2,
    Q33: about('shear'),
    shear: shearStiffness(layers.map((layer) => ({ ...layer, Q: (layer.equal + layer.opposite) / 2 }))),
  };
}

/** Layers of straight holes from the lower face to the upper, z from the middle. */
export function holeLayers({ counterbore, ...holes }: HoleArray, thickness: number): DrilledLayer[] {
  const half = thickness / 2;
  if (counterbore === undefined) return [{ holes, bottom: -half, thickness }];
  const { diameter, depth, side } = counterbore;
  const wide = { holes: { ...holes, diameter }, thickness: depth };
  const narrow = { holes, thickness: thickness - depth };
  return side === 'board'
    ? [
        { ...wide, bottom: -half },
        { ...narrow, bottom: depth - half },
      ]
    : [
        { ...narrow, bottom: -half },
        { ...wide, bottom: half - depth },
      ];
}

/**
 * `1/S = integral of tau^2/G` for a unit shear force: `tau(z) = integral from the lower face of Q (n - z) dz / D*`, n the
 * neutral surface. tau is quadratic in a layer, so three Gauss points are exact.
 */
function shearStiffness(
  layers: readonly { readonly Q: number; readonly G: number; readonly bottom: number; readonly thickness: number }[],
): number {
  let [A, B, D] = [0, 0, 0];
  for (const { Q, bottom, thickness: t } of layers) {
    A += Q * t;
    B += Q * t * (bottom + t / 2);
    D += Q * (t ** 3 / 12 + t * (bottom + t / 2) ** 2);
  }
  const n = B / A;
  const rigidity = D - n * B;
  let [carried, compliance] = [0, 0];
  for (const { Q, G, bottom, thickness: t } of layers) {
    const moment = (s: number) => Q * s * (n - bottom - s / 2);
    for (const [at, weight] of GAUSS) compliance += (weight * t * ((carried + moment(at * t)) / rigidity) ** 2) / G;
    carried += moment(t);
  }
  return 1 / compliance;
}

const GAUSS = [
  [(1 - Math.sqrt(0.6)) / 2, 5 / 18],
  [0.5, 8 / 18],
  [(1 + Math.sqrt(0.6)) / 2, 5 / 18],
] as const;
