import type { PlateProblem } from '@flathead/solver';
import { clampedDeflection } from './series/clamped.ts';
import { rhombusDeflection } from './series/rhombus.ts';
import { clampedWithShear, squareOnCorners } from './series/ritz.ts';
import { discOnPoints, heldRing } from './series/round.ts';
import { type SineLoad, type SineRectangle, sineDeflection } from './series/simply-supported.ts';

/** A plate whose largest deflection is known to more digits than any mesh of it is good for. */
export interface KnownPlate {
  readonly name: string;
  readonly problem: PlateProblem;
  /** Where it is largest. */
  readonly at: [number, number];
  /** mm */
  readonly value: number;
  /** Where the value comes from; every series is summed here, since printed tables end at four digits. */
  readonly source: string;
}

/** Ceramic, side or radius in mm, thickness, MPa and N. */
const [E, nu, a, thickness, q, P] = [320_000, 0.3, 64, 2.5, 0.0175, 83];
const rigidity = (t = thickness, poisson = nu): number => (E * t ** 3) / (12 * (1 - poisson ** 2));
const D = rigidity();
const section = { E, nu, thickness };
const tables = 'Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells';

const simple: PlateProblem['edges'] = [{ along: 'all', held: 'simple' }];
const clamped: PlateProblem['edges'] = [{ along: 'all', held: 'clamped' }];
const everywhere: PlateProblem['loads'] = [{ over: 'all', pressure: q }];
const inTheMiddle: PlateProblem['loads'] = [{ at: [0, 0], force: P }];

type Rest = Omit<PlateProblem, 'plate' | 'outline' | 'section'> & Partial<Pick<PlateProblem, 'section'>>;

function plate(outline: PlateProblem['outline'], rest: Rest): PlateProblem {
  return { plate: 1, outline, section, loads: everywhere, ...rest };
}

function known(
  name: string,
  problem: PlateProblem,
  value: number,
  source: string,
  at: [number, number] = [0, 0],
): KnownPlate {
  return { name, problem, at, value, source };
}

/** A simply supported rectangle by Navier's series, with a rigidity of its own if wanted. */
function sines(name: string, ratio: number, load: SineLoad, rest: Rest, stiffness: SineRectangle['stiffness']) {
  const sides = { a, b: ratio * a, stiffness };
  const given: PlateProblem['loads'] =
    'force' in load
      ? [load].map(({ force, at }) => ({ force, at: [...at] as [number, number] }))
      : [{ over: { rectangle: [...load.sides] as [number, number] }, pressure: load.pressure }];
  return known(
    name,
    plate({ rectangle: [a, ratio * a] }, { edges: simple, loads: given, ...rest }),
    sineDeflection(sides, load, [0, 0]),
    `Navier series; ${tables}, Art. 28`,
  );
}

const thin: SineRectangle['stiffness'] = (p, r) => D * (p * p + r * r) ** 2;
const uniform = (ratio: number): SineLoad => ({ pressure: q, sides: [a, ratio * a] });

/** Mindlin: `1 / stiffness = 1 / (D l^2) + 1 / (S l)`. */
function sheared(ratio: number): SineRectangle['stiffness'] {
  const [Dt, S] = [rigidity(ratio * a), ((5 / 6) * E * ratio * a) / (2 * (1 + nu))];
  return (p, r) => {
    const l = p * p + r * r;
    return 1 / (1 / (Dt * l * l) + 1 / (S * l));
  };
}

function onCorners(poisson: number): KnownPlate {
  const s = a / 2;
  const supports: PlateProblem['supports'] = [
    [-s, -s],
    [s, -s],
    [s, s],
    [-s, s],
  ].map(([x, y]) => ({ at: [x, y] }));
  return known(
    `square on its corner points, nu ${poisson}`,
    plate({ rectangle: [a, a] }, { section: { ...section, nu: poisson }, supports }),
    (squareOnCorners(poisson).centre * q * a ** 4) / rigidity(thickness, poisson),
    'Ritz method, 225 terms',
  );
}

function slabPanel(): KnownPlate {
  const catalan = 0.915965594177219;
  const s = a / 2;
  return known(
    'interior panel of a flat slab',
    plate(
      { rectangle: [a, a] },
      {
        edges: [{ along: 'all', held: 'symmetry' }],
        supports: [
          [-s, -s],
          [s, -s],
          [s, s],
          [-s, s],
        ].map(([x, y]) => ({ at: [x, y] })),
      },
    ),
    (catalan * q * a ** 4) / (16 * Math.PI ** 2 * D),
    // sum over m + n odd of 2/(2 pi)^4/(m^2 + n^2)^2, and the lattice sum of 1/(m^2 + n^2)^2 is 4 zeta(2) G.
    `double series in closed form, G q a^4/(16 pi^2 D) with Catalan's constant; ${tables}, Art. 54, to 0.4 %`,
  );
}

/** Points on a circle well inside of a free disc; three at 0.645 and six at 0.681 of its radius hold it flattest. */
function discOn(points: number, c: number): KnownPlate {
  const supports: PlateProblem['supports'] = Array.from({ length: points }, (_, k) => {
    const angle = (2 * Math.PI * k) / points + 0.3;
    return { at: [c * a * Math.cos(angle), c * a * Math.sin(angle)] };
  });
  return known(
    `disc on ${points} points at ${c} of its radius`,
    plate({ circle: 2 * a }, { supports }),
    (discOnPoints(points, c, nu) * q * a ** 4) / D,
    `Fourier series about the middle, after Nadai 1922 in ${tables}`,
  );
}

function rhombus(degrees: number): KnownPlate {
  const half = (degrees * Math.PI) / 360;
  const [along, across] = [a * Math.cos(half), a * Math.sin(half)];
  const polygon: [number, number][] = [
    [along, 0],
    [0, across],
    [-along, 0],
    [0, -across],
  ];
  return known(
    `simply supported rhombus of ${degrees} degrees`,
    plate({ polygon }, { edges: simple }),
    (rhombusDeflection(degrees) * q * a ** 4) / D,
    'corner functions fitted along the sides; Morley 1963',
  );
}

function triangle(): KnownPlate {
  const h = (a * Math.sqrt(3)) / 2;
  const polygon: [number, number][] = [
    [-a / 2, -h / 3],
    [a / 2, -h / 3],
    [0, (2 * h) / 3],
  ];
  return known(
    'simply supported equilateral triangle',
    plate({ polygon }, { edges: simple }),
    (q * h ** 4) / (972 * D),
    `${tables}, Art. 71: q h^4/(972 D)`,
  );
}

function ring(held: 'simple' | 'clamped', b: number): KnownPlate {
  const { w, at } = heldRing(b, held, nu);
  return known(
    `ring, ${held} at both edges, inner radius ${b}`,
    plate({ circle: 2 * a }, { openings: [{ circle: 2 * a * b }], edges: [{ along: 'all', held }] }),
    (w * q * a ** 4) / D,
    `${tables}, Art. 17`,
    [at * a, 0],
  );
}

function onFoundation(): KnownPlate {
  const l = 3.2;
  return known(
    'plate on a foundation, point load',
    plate({ rectangle: [18 * l, 18 * l] }, { foundations: [{ over: 'all', modulus: D / l ** 4 }], loads: inTheMiddle }),
    (P * l ** 2) / (8 * D),
    `${tables}, Art. 57: P l^2/(8 D) for an endless plate; the edges 9 l away add 1e-5 at most`,
  );
}

/** A simply supported square on a spring in its middle that takes as much as brings the deflection down to 1/1.3. */
function onSpring(): KnownPlate {
  const sides = { a, b: a, stiffness: thin };
  const give = sineDeflection(sides, { force: 1, at: [0, 0] }, [0, 0]);
  return known(
    'simply supported square on a spring',
    plate({ rectangle: [a, a] }, { edges: simple, supports: [{ at: [0, 0], stiffness: 0.3 / give }] }),
    sineDeflection(sides, uniform(1), [0, 0]) / 1.3,
    `Navier series and statics; ${tables}, Art. 34`,
  );
}

function clampedRectangle(ratio: number, load: 'pressure' | 'point'): KnownPlate {
  const value = clampedDeflection(ratio, load);
  return known(
    `clamped rectangle b/a ${ratio}, ${load}`,
    plate({ rectangle: [a, ratio * a] }, { edges: clamped, loads: load === 'point' ? inTheMiddle : everywhere }),
    (value * (load === 'point' ? P * a ** 2 : q * a ** 4)) / D,
    `simply supported plate and edge moments, 120 waves; ${tables}, Art. 44, and Taylor & Govindjee 2004`,
  );
}

function clampedSheared(ratio: number): KnownPlate {
  return known(
    `clamped square t/a ${ratio}, with shear`,
    plate({ rectangle: [a, a] }, { edges: clamped, section: { ...section, thickness: ratio * a }, theory: 'shear' }),
    (clampedWithShear(ratio, nu) * q * a ** 4) / rigidity(ratio * a),
    'Ritz method for Mindlin plates, 243 terms',
  );
}

/** Plates with answers from a series or in closed form. */
export function knownPlates(): readonly KnownPlate[] {
  const [Dx, Dy, D1, Dxy] = [2 * D, 0.6 * D, 0.25 * D, 0.4 * D];
  const modulus = (200 * D) / a ** 4;
  return [
    sines('simply supported square', 1, uniform(1), {}, thin),
    sines('simply supported rectangle b/a 1.5', 1.5, uniform(1.5), {}, thin),
    sines('simply supported rectangle b/a 2', 2, uniform(2), {}, thin),
    sines('simply supported square, point load', 1, { force: P, at: [0, 0] }, {}, thin),
    sines('simply supported square, patch', 1, { pressure: q, sides: [0.3 * a, 0.2 * a] }, {}, thin),
    sines(
      'simply supported orthotropic square',
      1,
      uniform(1),
      { section: { Dx, Dy, D1, Dxy } },
      (p, r) => Dx * p ** 4 + 2 * (D1 + 2 * Dxy) * p * p * r * r + Dy * r ** 4,
    ),
    sines(
      'simply supported square on a foundation',
      1,
      uniform(1),
      { foundations: [{ over: 'all', modulus }] },
      (p, r) => thin(p, r) + modulus,
    ),
    ...[0.05, 0.1, 0.2].map((ratio) =>
      sines(
        `simply supported square t/a ${ratio}, with shear`,
        1,
        uniform(1),
        { theory: 'shear', section: { ...section, thickness: ratio * a } },
        sheared(ratio),
      ),
    ),
    onSpring(),
    clampedRectangle(1, 'pressure'),
    clampedRectangle(1.5, 'pressure'),
    clampedRectangle(2, 'pressure'),
    clampedRectangle(1, 'point'),
    ...[0.05, 0.1, 0.2].map(clampedSheared),
    onCorners(0.3),
    onCorners(0.25),
    slabPanel(),
    discOn(3, 0.92),
    discOn(4, 0.85),
    discOn(6, 0.681),
    ...[30, 60, 80].map(rhombus),
    triangle(),
    ring('simple', 0.3),
    ring('clamped', 0.3),
    known('clamped disc', plate({ circle: 2 * a }, { edges: clamped }), (q * a ** 4) / (64 * D), `${tables}, Art. 16`),
    known(
      'simply supported disc',
      plate({ circle: 2 * a }, { edges: simple }),
      (((5 + nu) / (1 + nu)) * q * a ** 4) / (64 * D),
      `${tables}, Art. 16`,
    ),
    onFoundation(),
  ];
}
