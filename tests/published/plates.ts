import type { PlateProblem, Shape } from '@flathead/solver';

/** A plate that check values speak of: how it is posed, their units, and the points they name. */
export interface Plate {
  readonly problem: PlateProblem;
  /** Unit of deflection, mm. */
  readonly w: number;
  /** Unit of moment, N mm/mm. */
  readonly m: number;
  readonly points: Readonly<Record<string, [number, number]>>;
}

/** Ceramic, MPa; Poisson's ratio is that of the source. */
const E = 320_000;
/** Short side, side of a rhombus, or radius, mm. */
const a = 64;
const thickness = 2.5;
/** MPa, for loads given as pressure. */
const q = -0.0175;
/** N, for point loads. */
const P = 83;
/** Element size over the square root of the area: about 5,500 nodes, 16,500 dofs. */
const FINENESS = 0.0145;

const rigidity = (nu: number, t = thickness): number => (E * t ** 3) / (12 * (1 - nu * nu));
const sized = (area: number): { size: number } => ({ size: FINENESS * Math.sqrt(area) });
const everywhere: PlateProblem['loads'] = [{ over: 'all', pressure: q }];
const atCentre: PlateProblem['loads'] = [{ at: [0, 0], force: P }];

type Rest = Omit<PlateProblem, 'plate' | 'outline' | 'section'>;

function rectangle(ratio: number, rest: Rest, nu = 0.3, t = thickness): Plate {
  const [halfWidth, halfHeight] = [a / 2, (ratio * a) / 2];
  const pointLoad = rest.loads === atCentre;
  return {
    problem: {
      plate: 1,
      outline: { rectangle: [a, ratio * a] },
      section: { E, nu, thickness: t },
      mesh: sized(ratio * a * a),
      report: { at: [] },
      ...rest,
    },
    w: pointLoad ? (P * a ** 2) / rigidity(nu, t) : (q * a ** 4) / rigidity(nu, t),
    m: pointLoad ? P : q * a ** 2,
    points: {
      centre: [0, 0],
      'middle of a side across x': [halfWidth, 0],
      'middle of a side along x': [0, halfHeight],
    },
  };
}

const simple: PlateProblem['edges'] = [{ along: 'all', held: 'simple' }];
const clamped: PlateProblem['edges'] = [{ along: 'all', held: 'clamped' }];
const corners: PlateProblem['supports'] = [
  { at: [-a / 2, -a / 2] },
  { at: [a / 2, -a / 2] },
  { at: [a / 2, a / 2] },
  { at: [-a / 2, a / 2] },
];

/** Sides of a polygon that stands for the circle of radius a: its area is that of the circle. */
const SIDES = 240;

/** Corner k of the polygon: 1.0001 a from the centre, which moves a deflection by 2e-4 at most. */
function rim(k: number): [number, number] {
  const radius = a * Math.sqrt((2 * Math.PI) / (SIDES * Math.sin((2 * Math.PI) / SIDES)));
  const angle = (2 * Math.PI * k) / SIDES;
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
}

function round(outline: Shape, nu: number, rest: Rest, w: number): Plate {
  return {
    problem: {
      plate: 1,
      outline,
      section: { E, nu, thickness },
      mesh: sized(Math.PI * a * a),
      loads: everywhere,
      ...rest,
    },
    w: w / rigidity(nu),
    m: q * a ** 2,
    points: { centre: [0, 0], 'rim on x': rim(0) },
  };
}

const disc = (edges: PlateProblem['edges']): Plate => {
  const plate = round({ circle: 2 * a }, 0.3, { edges }, q * a ** 4);
  return { ...plate, points: { ...plate.points, 'rim on x': [a, 0] } };
};

/** Rigid points evenly spaced on the rim; the unit of deflection is `P a^2 / D` with `P = pi a^2 q`. */
function onRim(count: number, nu: number): Plate {
  const polygon = Array.from({ length: SIDES }, (_, k) => rim(k));
  const supports = Array.from({ length: count }, (_, k) => ({ at: rim((k * SIDES) / count) }));
  return round({ polygon }, nu, { supports }, Math.PI * q * a ** 4);
}

function rhombus(degrees: number): Plate {
  const angle = (degrees * Math.PI) / 180;
  const [along, across] = [a * Math.cos(angle / 2), a * Math.sin(angle / 2)];
  const nu = 0.3;
  return {
    problem: {
      plate: 1,
      outline: {
        polygon: [
          [along, 0],
          [0, across],
          [-along, 0],
          [0, -across],
        ],
      },
      section: { E, nu, thickness },
      edges: simple,
      loads: everywhere,
      // A little coarser than the rest: the mesh is graded to the obtuse corners, where moments grow without bound.
      mesh: { size: 1.15 * FINENESS * Math.sqrt(2 * along * across) },
    },
    w: (q * a ** 4) / rigidity(nu),
    m: q * a ** 2,
    points: { centre: [0, 0] },
  };
}

/** Square of 18 l with free edges, l = (D/k)^(1/4): what the edges reflect, about exp(-18 / sqrt 2), is below 1e-5. */
function onFoundation(): Plate {
  const nu = 0.3;
  const l = 3.2;
  return {
    problem: {
      plate: 1,
      outline: { rectangle: [18 * l, 18 * l] },
      section: { E, nu, thickness },
      foundations: [{ over: 'all', modulus: rigidity(nu) / l ** 4 }],
      loads: atCentre,
      mesh: sized((18 * l) ** 2),
    },
    w: (P * l ** 2) / rigidity(nu),
    m: P,
    points: { centre: [0, 0] },
  };
}

const sheared = (edges: PlateProblem['edges'], ratio: number): Plate =>
  rectangle(1, { edges, loads: everywhere, theory: 'shear' }, 0.3, ratio * a);

/** Roark's units: `q b^4 / (E t^3)` for w, and `q b^2 / 6` so that `6 m / t^2 = beta q b^2 / t^2`. */
const afterRoark = (): Plate => ({
  ...rectangle(1, { edges: simple, loads: everywhere }),
  w: (q * a ** 4) / (E * thickness ** 3),
  m: (q * a ** 2) / 6,
});

/** The plates by the names that the check values use. Thin unless they say otherwise. */
export const plates: Readonly<Record<string, Plate>> = {
  'simply supported square, uniform': rectangle(1, { edges: simple, loads: everywhere }),
  'simply supported rectangle b/a 1.5, uniform': rectangle(1.5, { edges: simple, loads: everywhere }),
  'simply supported rectangle b/a 2, uniform': rectangle(2, { edges: simple, loads: everywhere }),
  'simply supported square, point load': rectangle(1, { edges: simple, loads: atCentre }),
  'clamped square, uniform': rectangle(1, { edges: clamped, loads: everywhere }),
  'clamped rectangle b/a 1.5, uniform': rectangle(1.5, { edges: clamped, loads: everywhere }),
  'clamped rectangle b/a 2, uniform': rectangle(2, { edges: clamped, loads: everywhere }),
  'clamped square, point load': rectangle(1, { edges: clamped, loads: atCentre }),
  'square on its corner points, uniform': rectangle(1, { supports: corners, loads: everywhere }),
  'square on its corner points, uniform, nu 0.25': rectangle(1, { supports: corners, loads: everywhere }, 0.25),
  'flat slab interior panel b/a 1': rectangle(1, {
    edges: [{ along: 'all', held: 'symmetry' }],
    supports: corners,
    loads: everywhere,
  }),
  'circle on 3 edge points, uniform, nu 0.25': onRim(3, 0.25),
  'circle on 4 edge points, uniform, nu 0.25': onRim(4, 0.25),
  'circle on 6 edge points, uniform, nu 0.25': onRim(6, 0.25),
  'circle on 3 edge points, uniform, nu 0.3': onRim(3, 0.3),
  'circle on 4 edge points, uniform, nu 0.3': onRim(4, 0.3),
  'circle on 6 edge points, uniform, nu 0.3': onRim(6, 0.3),
  'rhombus 30 degrees, uniform': rhombus(30),
  'rhombus 60 degrees, uniform': rhombus(60),
  'rhombus 80 degrees, uniform': rhombus(80),
  'infinite plate on an elastic foundation, point load': onFoundation(),
  'clamped circle, uniform': disc(clamped),
  'simply supported circle, uniform': disc(simple),
  'simply supported square t/a 0.05, with shear': sheared(simple, 0.05),
  'simply supported square t/a 0.1, with shear': sheared(simple, 0.1),
  'simply supported square t/a 0.2, with shear': sheared(simple, 0.2),
  'clamped square t/a 0.05, with shear': sheared(clamped, 0.05),
  'clamped square t/a 0.1, with shear': sheared(clamped, 0.1),
  'clamped square t/a 0.2, with shear': sheared(clamped, 0.2),
  'simply supported square, uniform, after Roark': afterRoark(),
};
