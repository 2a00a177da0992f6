/** One number that an independent source gives for one quantity of one plate. */
export interface CheckValue {
  /** Name of the plate, a key of the plates in `plates.ts`. */
  readonly plate: string;
  readonly quantity: 'w' | 'mxx' | 'myy';
  /** Name of the point of the plate. */
  readonly at: string;
  /** In the units of the plate: of deflection for w, of moment per length for the others. */
  readonly value: number;
  /** Relative. */
  readonly tolerance: number;
  /** Where the number comes from. */
  readonly source: string;
  /** Read in the source, recalled from it, or computed independently of this program by the method named. */
  readonly basis: 'published' | 'memory' | 'derived';
}

/** Relative tolerance of a deflection and of a moment. */
const W = 0.005;
const M = 0.02;

const tables = 'Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells';
const navier = `${tables}, Table 8; Navier series`;
const clampedSquare = 'Taylor & Govindjee 2004, Solution of clamped rectangular plate problems; recomputed';
const fourCorners = 'Ritz method; beware 0.0249 for the deflection, quoted in places';
const nadai = `${tables} after Nadai 1922; recomputed`;

const of =
  (plate: string, source: string, basis: CheckValue['basis']) =>
  (
    quantity: CheckValue['quantity'],
    value: number,
    at = 'centre',
    tolerance = quantity === 'w' ? W : M,
  ): CheckValue => ({
    plate,
    quantity,
    at,
    value,
    tolerance,
    source,
    basis,
  });

const roundAt = (points: number, nu: number, value: number, source: string, basis: CheckValue['basis']): CheckValue =>
  of(`circle on ${points} edge points, uniform, nu ${nu}`, source, basis)('w', value);

const square = of('simply supported square, uniform', navier, 'published');
const clamped = of('clamped square, uniform', clampedSquare, 'published');
const onCorners = of('square on its corner points, uniform', fourCorners, 'derived');
const onCornersSofter = of('square on its corner points, uniform, nu 0.25', fourCorners, 'derived');
const roundClamped = of('clamped circle, uniform', `${tables}, Art. 16`, 'published');
const roundSimple = of('simply supported circle, uniform', `${tables}, Art. 16`, 'published');
const roark = of('simply supported square, uniform, after Roark', "Roark's Formulas, Table 11.4", 'published');

/** Values for thin plates. nu = 0.3 unless the plate says otherwise. */
export const thinPlates: readonly CheckValue[] = [
  square('w', 0.00406235),
  square('mxx', 0.0478864),
  of('simply supported rectangle b/a 1.5, uniform', navier, 'published')('w', 0.007724),
  of('simply supported rectangle b/a 2, uniform', navier, 'published')('w', 0.0101287),
  of('simply supported square, point load', `${tables}; Navier series`, 'published')('w', 0.0116008),
  clamped('w', 0.001265319087),
  clamped('mxx', 0.02290509),
  clamped('mxx', -0.051334, 'middle of a side across x'),
  of('clamped rectangle b/a 1.5, uniform', `${tables}, Table 35; recomputed`, 'published')('w', 0.002197),
  of('clamped rectangle b/a 2, uniform', `${tables}, Table 35; recomputed`, 'published')('w', 0.002533),
  of('clamped square, point load', `${tables}, Table 37; recomputed`, 'memory')('w', 0.0056, 'centre', 0.01),
  onCorners('w', 0.025507),
  onCorners('w', 0.017747, 'middle of a side along x'),
  onCorners('mxx', 0.1117),
  onCorners('mxx', 0.1504, 'middle of a side along x'),
  onCornersSofter('w', 0.025669),
  onCornersSofter('w', 0.017458, 'middle of a side along x'),
  of('flat slab interior panel b/a 1', `double series; ${tables}, flat slabs, to 0.4 %`, 'derived')('w', 0.00579997),
  roundAt(3, 0.25, 0.0362, nadai, 'published'),
  roundAt(4, 0.25, 0.02681, 'series solution', 'derived'),
  roundAt(6, 0.25, 0.02252, 'series solution', 'derived'),
  roundAt(3, 0.3, 0.03654, 'series solution', 'derived'),
  roundAt(4, 0.3, 0.02655, 'series solution', 'derived'),
  roundAt(6, 0.3, 0.022, 'series solution', 'derived'),
  of('rhombus 30 degrees, uniform', 'Morley 1963; recomputed 0.0004075', 'memory')('w', 0.000408, 'centre', 0.01),
  of('rhombus 60 degrees, uniform', 'series solution', 'derived')('w', 0.00256, 'centre', 0.01),
  of('rhombus 80 degrees, uniform', 'series solution', 'derived')('w', 0.003869, 'centre', 0.01),
  of('infinite plate on an elastic foundation, point load', `${tables}, Art. 57`, 'published')('w', 1 / 8),
  roundClamped('w', 1 / 64),
  roundClamped('mxx', (1 + 0.3) / 16),
  roundClamped('mxx', -1 / 8, 'rim on x'),
  roundSimple('w', (5 + 0.3) / (1 + 0.3) / 64),
  roundSimple('mxx', (3 + 0.3) / 16),
];

const mindlin = 'Navier series of Mindlin plate theory, shear correction 5/6';
const ritz = 'Ritz method, shear correction 5/6';

/** Values with transverse shear: t/a = 0.05, 0.1 and 0.2. */
export const shearPlates: readonly CheckValue[] = [
  of('simply supported square t/a 0.05, with shear', mindlin, 'derived')('w', 0.004115),
  of('simply supported square t/a 0.1, with shear', mindlin, 'derived')('w', 0.0042728),
  of('simply supported square t/a 0.2, with shear', mindlin, 'derived')('w', 0.0049043),
  of('clamped square t/a 0.05, with shear', ritz, 'derived')('w', 0.0013273),
  of('clamped square t/a 0.1, with shear', ritz, 'derived')('w', 0.0015046),
  of('clamped square t/a 0.2, with shear', ritz, 'derived')('w', 0.0021722),
];

/** `w = alpha q b^4 / (E t^3)` and `sigma = beta q b^2 / t^2 = 6 m / t^2`, nu = 0.3. */
export const roarkPlates: readonly CheckValue[] = [roark('w', 0.0444), roark('mxx', 0.2874)];
