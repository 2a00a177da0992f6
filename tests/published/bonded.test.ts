import { type PlateProblem, type Shape, solvePlate } from '@flathead/solver';
import { describe, expect, it } from 'vitest';

/* Layers bonded off the plate's mid-plane where symmetry gives the answer; beams of layers are in the verification book. */

const LENGTH = 80;
const WIDTH = 4;
const strip = (length: number, width = WIDTH) => ({ rectangle: [length, width] as [number, number] });
const ends = [-LENGTH / 2, LENGTH / 2].map((x) => ({
  along: { from: [x, -WIDTH / 2] as [number, number], to: [x, WIDTH / 2] as [number, number] },
  held: 'simple' as const,
}));
const base = { E: 3.2e5, nu: 0, thickness: 3 };

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

describe('layers of unlike expansion heated alike', () => {
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
