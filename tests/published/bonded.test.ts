import { type PlateProblem, type Shape, solvePlate } from '@flathead/solver';
import { describe, expect, it } from 'vitest';

/*
 * Layers bonded off the plate's mid-plane against composite beam theory (parallel axes, exact) on narrow strips without
 * Poisson effect, and Timoshenko's strip of two metals.
 */

const LENGTH = 80;
const WIDTH = 4;
const strip = (length: number, width = WIDTH) => ({ rectangle: [length, width] as [number, number] });
const ends = [-LENGTH / 2, LENGTH / 2].map((x) => ({
  along: { from: [x, -WIDTH / 2] as [number, number], to: [x, WIDTH / 2] as [number, number] },
  held: 'simple' as const,
}));
const base = { E: 3.2e5, nu: 0, thickness: 3 };

/** EI of two bonded bars about their common neutral axis, rectangle on rectangle. */
function composite(E1: number, b1: number, t1: number, E2: number, b2: number, t2: number): number {
  const [a1, a2] = [E1 * b1 * t1, E2 * b2 * t2];
  const e = (t1 + t2) / 2;
  return (a1 * t1 ** 2 + a2 * t2 ** 2) / 12 + (a1 * a2 * e ** 2) / (a1 + a2);
}

/** Largest deflection of a simply supported beam under an even load q, stiffness EI1 and EI2 over the middle `rib`. */
function steppedBeam(q: number, EI1: number, EI2: number, rib: number): number {
  // w(L/2) = integral from the end of M x/EI: virtual unit force in the middle, by symmetry (Mohr; exact).
  const L = LENGTH;
  const part = (x: number) => (q * L * x ** 3) / 6 - (q * x ** 4) / 8;
  const a = (L - rib) / 2;
  return part(a) / EI1 + (part(L / 2) - part(a)) / EI2;
}

function stripWithRib(E2: number, t2: number, rib: number, size: number, join: 'bonded' | 'sliding' = 'bonded') {
  const { E, nu, thickness: t } = base;
  return solvePlate({
    plate: 1,
    outline: strip(LENGTH),
    section: base,
    regions: [
      {
        shape: strip(rib),
        section: {
          layers: [
            { E, nu, thickness: t, bottom: -t / 2 },
            { E: E2, nu, thickness: t2, bottom: t / 2 },
          ],
          join,
        },
      },
    ],
    edges: ends,
    loads: [{ over: 'all', force: 40 }],
    mesh: { size },
  });
}

describe('a bar bonded on a bar', () => {
  it.each([
    ['the same modulus', 3.2e5, 3],
    ['a softer bar', 2e5, 4],
    ['a thin stiff bar', 6e5, 1],
  ])('of %s bends as the composite beam within 0.2 %%, 4 elements along the rib', (_, E2, t2) => {
    const rib = 40;
    const { E, thickness } = base;
    const exact = steppedBeam(
      40 / LENGTH,
      (E * WIDTH * thickness ** 3) / 12,
      composite(E, WIDTH, thickness, E2, WIDTH, t2),
      rib,
    );
    const { w } = stripWithRib(E2, t2, rib, rib / 4);
    expect(Math.abs(w.max.value / exact - 1)).toBeLessThan(0.002);
  });

  it('that slides adds its own stiffness only', () => {
    const { E, thickness } = base;
    const EI = (e: number, t: number) => (e * WIDTH * t ** 3) / 12;
    const exact = steppedBeam(40 / LENGTH, EI(E, thickness), EI(E, thickness) + EI(2e5, 4), 40);
    expect(Math.abs(stripWithRib(2e5, 4, 40, 10, 'sliding').w.max.value / exact - 1)).toBeLessThan(0.002);
  });
});

describe('a strip with a rib along it', () => {
  it('of another expansion bows when heated as a T beam of two metals does, within 0.5 %', () => {
    // k = sum E A alpha dT (z - zc)/EI about the common neutral axis: Timoshenko's strip with unlike widths (exact but
    // for the ends, where the shear between the two builds up over about their width).
    const [b, rib, t2, E2, rise] = [6, 2, 4, 2e5, 65];
    const { E, nu, thickness: t } = base;
    const length = 240;
    const { w } = solvePlate({
      plate: 1,
      outline: strip(length, b),
      section: { ...base, expansion: 6.5e-6 },
      regions: [
        {
          shape: strip(length, rib),
          section: {
            layers: [
              { E, nu, thickness: t, bottom: -t / 2, expansion: 6.5e-6 },
              { E: E2, nu, thickness: t2, bottom: t / 2, expansion: 1.1e-5 },
            ],
            join: 'bonded',
          },
        },
      ],
      edges: [-length / 2, length / 2].map((x) => ({ along: { from: [x, -b / 2], to: [x, b / 2] }, held: 'simple' })),
      temperature: { change: rise },
      mesh: { size: 2 },
    });
    const [a1, a2] = [E * b * t, E2 * rib * t2];
    const [e, zc] = [(t + t2) / 2, (a2 * (t + t2)) / 2 / (a1 + a2)];
    const kappa = (rise * (a1 * 6.5e-6 * -zc + a2 * 1.1e-5 * (e - zc))) / composite(E, b, t, E2, rib, t2);
    expect(Math.abs(w.max.value / ((kappa * length ** 2) / 8) - 1)).toBeLessThan(0.005);
  });

  it('bends as a T beam within 0.2 % when flange and rib are slender', () => {
    // Flange as wide as a tenth of the span; the rib fills the middle of it. Shear lag is below 0.1 %.
    const [b, rib, t2] = [8, 2, 5];
    const { E, nu, thickness: t } = base;
    const length = 160;
    const { w } = solvePlate({
      plate: 1,
      outline: strip(length, b),
      section: base,
      regions: [
        {
          shape: strip(length, rib),
          section: {
            layers: [
              { E, nu, thickness: t, bottom: -t / 2 },
              { E, nu, thickness: t2, bottom: t / 2 },
            ],
            join: 'bonded',
          },
        },
      ],
      edges: [-length / 2, length / 2].map((x) => ({ along: { from: [x, -b / 2], to: [x, b / 2] }, held: 'simple' })),
      loads: [{ over: strip(length, rib), force: 40 }],
      mesh: { size: 2 },
    });
    const exact = (5 * 40 * length ** 3) / (384 * composite(E, b, t, E, rib, t2));
    expect(Math.abs(w.max.value / exact - 1)).toBeLessThan(0.002);
  });
});

describe('a plate with a cross of ribs', () => {
  it('is bent alike whole and as a quarter between edges of symmetry, loaded and heated', () => {
    const { thickness: t } = base;
    const [a, b, rib] = [60, 40, 4];
    const body = { E: 3.2e5, nu: 0.22, thickness: t, bottom: -t / 2, expansion: 6.5e-6 };
    const layers = [body, { E: 2e5, nu: 0.28, thickness: 4, bottom: t / 2, expansion: 1.1e-5 }];
    const { bottom: _bottom, ...section } = body;
    const plate = (quarter: boolean, loads: PlateProblem['loads'], temperature: PlateProblem['temperature']) => {
      const box = (width: number, height: number): Shape =>
        quarter
          ? { rectangle: [width / 2, height / 2], centre: [width / 4, height / 4] }
          : { rectangle: [width, height] };
      return solvePlate({
        plate: 1,
        outline: box(a, b),
        section,
        regions: [box(a, rib), box(rib, b)].map((shape) => ({ shape, section: { layers, join: 'bonded' } })),
        edges: quarter
          ? [
              { along: { from: [0, 0], to: [a / 2, 0] }, held: 'symmetry' },
              { along: { from: [0, 0], to: [0, b / 2] }, held: 'symmetry' },
            ]
          : [],
        supports: [-1, 1].flatMap((x) =>
          [-1, 1].flatMap((y) =>
            quarter && (x < 0 || y < 0) ? [] : [{ at: [(x * a) / 2, (y * b) / 2] as [number, number] }],
          ),
        ),
        loads,
        temperature,
        theory: 'shear',
        mesh: { size: 0.9 },
        report: {
          at: [
            [0, 0],
            [11, 7],
          ],
        },
      }).w.at;
    };
    const pressed: PlateProblem['loads'] = [{ over: 'all', pressure: 0.01 }];
    const cases: [PlateProblem['loads'], PlateProblem['temperature']][] = [
      [pressed, undefined],
      [[], { change: 65 }],
    ];
    for (const [loads, temperature] of cases) {
      const whole = plate(false, loads, temperature);
      plate(true, loads, temperature).forEach((w, i) => {
        expect(Math.abs(w / whole[i] - 1)).toBeLessThan(0.003);
      });
    }
  });
});

describe('two bonded layers heated alike', () => {
  it('bow as Timoshenko found (1925, J. Opt. Soc. Am. 11) within 0.2 %', () => {
    const [E2, t2, rib, rise] = [2e5, 2, 40, 65];
    const { E, nu, thickness: t } = base;
    const [m, n] = [t / t2, E / E2];
    const kappa =
      (6 * 4.5e-6 * rise * (1 + m) ** 2) / ((t + t2) * (3 * (1 + m) ** 2 + (1 + m * n) * (m ** 2 + 1 / (m * n))));
    const { w } = solvePlate({
      plate: 1,
      outline: strip(LENGTH),
      section: { ...base, expansion: 6.5e-6 },
      regions: [
        {
          shape: strip(rib),
          section: {
            layers: [
              { E, nu, thickness: t, bottom: -t / 2, expansion: 6.5e-6 },
              { E: E2, nu, thickness: t2, bottom: t / 2, expansion: 1.1e-5 },
            ],
            join: 'bonded',
          },
        },
      ],
      edges: ends,
      temperature: { change: rise },
      mesh: { size: 10 },
    });
    // Bent over the middle, straight beyond: the slope kappa rib/2 over the whole half span less the rise within the rib.
    const exact = (kappa * rib * LENGTH) / 4 - (kappa * rib ** 2) / 8;
    expect(Math.abs(w.max.value / exact - 1)).toBeLessThan(0.002);
  });

  it('only stretch when they are mirrored', () => {
    expect(mirrored()).toBeLessThan(1e-12);
  });
});

/** Largest deflection of a bare strip whose middle is bimetal on both faces. */
function mirrored(): number {
  const { E, nu, thickness: t } = base;
  const frame = { E: 2e5, nu, thickness: 1, expansion: 1.1e-5 };
  const { w } = solvePlate({
    plate: 1,
    outline: strip(LENGTH),
    section: { ...base, expansion: 6.5e-6 },
    regions: [
      {
        shape: strip(40),
        section: {
          layers: [
            { ...frame, bottom: -t / 2 - 1 },
            { E, nu, thickness: t, bottom: -t / 2, expansion: 6.5e-6 },
            { ...frame, bottom: t / 2 },
          ],
          join: 'bonded',
        },
      },
    ],
    edges: ends,
    temperature: { change: 65 },
    mesh: { size: 10 },
  });
  return Math.max(w.max.value, -w.min.value);
}
