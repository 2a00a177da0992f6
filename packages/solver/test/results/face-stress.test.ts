import { describe, expect, it } from 'vitest';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { bearingFaces, bearingOn, discsOver, equivalentRadius } from '../../src/results/bearing-stress.ts';
import { cornerGroups } from '../../src/results/corner-groups.ts';
import { faceStresses } from '../../src/results/face-stress.ts';
import { nodalCurvatures } from '../../src/results/nodal-strain.ts';
import { firstPrincipal, secondPrincipal, vonMises } from '../../src/results/plane-stress.ts';
import { stressPart } from '../../src/results/stress-part.ts';
import { rigidityOf } from '../../src/section/rigidity-of.ts';
import type { Section } from '../../src/section/section.ts';
import { stressLayers } from '../../src/section/stress-layers.ts';
import { rectangleMesh } from '../assembly/sample-meshes.ts';
import { solvedStress, stressNear } from './solved-stress.ts';

const relative = (value: number, expected: number) => Math.abs(value / expected - 1);

/** A simply supported strip of span 60 with 0.1 N/mm2 over it: moment q L^2/8 in the middle. */
const strip = (section: Section): PlateProblem => ({
  plate: 1,
  outline: { rectangle: [60, 4] },
  section,
  edges: [-30, 30].map((x) => ({
    along: { from: [x, -2] as [number, number], to: [x, 2] as [number, number] },
    held: 'simple' as const,
  })),
  loads: [{ over: 'all', pressure: 0.1 }],
  mesh: { size: 1 },
});
const M = (0.1 * 60 ** 2) / 8;

describe('stress on the faces', () => {
  it('is 6 M/t^2 under a uniform moment', () => {
    const mesh = rectangleMesh(3, 5);
    const section = { E: 2000, nu: 0.3, thickness: 1.5 };
    const rigidity = rigidityOf(section, '');
    const part = stressPart(
      { mesh, section: mesh.region, layers: [stressLayers(section, rigidity)!] },
      cornerGroups(mesh),
    );
    // w = -(x^2 + 2 y^2 + 2 x y)/200: kxx = 0.01, kyy = 0.02, 2 kxy = 0.02.
    const u = Float64Array.from({ length: 3 * mesh.x.length }, (_, p) => {
      const [x, y] = [mesh.x[Math.floor(p / 3)], mesh.y[Math.floor(p / 3)]];
      return [-(x * x + 2 * y * y + 2 * x * y) / 200, -(2 * y + x) / 100, (x + y) / 100][p % 3];
    });
    const [curvature] = nodalCurvatures(mesh, [rigidity], 'thin', [u]);
    const stress = faceStresses(part, { curvature, stretch: null });
    const D = (2000 * 1.5 ** 3) / (12 * (1 - 0.09));
    const moments = [D * (0.01 + 0.3 * 0.02), D * (0.02 + 0.3 * 0.01), (D * 0.7 * 0.02) / 2];
    stress.forEach((value, i) => {
      const side = Math.floor(i / 3) % 2 === 0 ? -1 : 1;
      expect(value).toBeCloseTo((side * 6 * moments[i % 3]) / 1.5 ** 2, 9);
    });
    // Stretched as well: sigma = Q eps0 on top of it.
    const stretch = curvature.map((_, i) => [0.001, 0, 0][i % 3]);
    const both = faceStresses(part, { curvature, stretch });
    expect(both[0] - stress[0]).toBeCloseTo((2000 * 0.001) / (1 - 0.09), 9);
    expect(both[4] - stress[4]).toBeCloseTo((0.3 * 2000 * 0.001) / (1 - 0.09), 9);
  });

  it('has the principal stresses and von Mises of the textbook', () => {
    const state = Float64Array.of(50, 10, 15);
    expect(firstPrincipal(state)).toBeCloseTo(55, 12);
    expect(secondPrincipal(state)).toBeCloseTo(5, 12);
    expect(vonMises(state)).toBeCloseTo(Math.sqrt(55 ** 2 - 55 * 5 + 5 ** 2), 12);
    expect(vonMises(Float64Array.of(0, 0, 10))).toBeCloseTo(10 * Math.sqrt(3), 12);
  });

  it('at the centre of a simply supported square is 0.2874 q b^2/t^2 (Roark, Table 11.4, published)', () => {
    const solved = solvedStress({
      plate: 1,
      outline: { rectangle: [80, 80] },
      section: { E: 320_000, nu: 0.3, thickness: 2 },
      edges: [{ along: 'all', held: 'simple' }],
      loads: [{ over: 'all', pressure: 0.01 }],
      mesh: { size: 2 },
    });
    const centre = stressNear(solved, [0, 0], 0, 1);
    const expected = (0.2874 * 0.01 * 80 ** 2) / 2 ** 2;
    expect(relative(centre.sxx, expected)).toBeLessThan(0.01);
    expect(relative(centre.syy, expected)).toBeLessThan(0.01);
    expect(stressNear(solved, [0, 0], 0, 0).sxx).toBeCloseTo(-centre.sxx, 9);
  });

  it('in bonded layers is M E z / sum E I, with the jump at the bond (composite beam theory)', () => {
    const [hard, soft] = [200_000, 60_000];
    const layers = [
      { E: hard, nu: 0, thickness: 1, bottom: -3 },
      { E: soft, nu: 0, thickness: 4, bottom: -2 },
      { E: hard, nu: 0, thickness: 1, bottom: 2 },
    ];
    const EI = (hard * (6 ** 3 - 4 ** 3) + soft * 4 ** 3) / 12;
    const solved = solvedStress(strip({ layers, join: 'bonded' }));
    layers.forEach(({ E, bottom, thickness }, i) => {
      expect(relative(stressNear(solved, [0, 0], i, 0).sxx, (M * E * bottom) / EI)).toBeLessThan(0.005);
      expect(relative(stressNear(solved, [0, 0], i, 1).sxx, (M * E * (bottom + thickness)) / EI)).toBeLessThan(0.005);
    });
  });

  it('in sliding layers is that of each bending by itself, M E (t/2) / sum E I of its own', () => {
    const layers = [
      { E: 200_000, nu: 0, thickness: 3, bottom: -5 },
      { E: 60_000, nu: 0, thickness: 4, bottom: -2 },
    ];
    const EI = layers.reduce((sum, { E, thickness }) => sum + (E * thickness ** 3) / 12, 0);
    const solved = solvedStress(strip({ layers, join: 'sliding' }));
    layers.forEach(({ E, thickness }, i) => {
      const expected = (M * E * thickness) / 2 / EI;
      expect(relative(stressNear(solved, [0, 0], i, 1).sxx, expected)).toBeLessThan(0.005);
      expect(relative(stressNear(solved, [0, 0], i, 0).sxx, -expected)).toBeLessThan(0.005);
    });
  });

  /** Upper layer bonded on all of the strip, or only on its middle half: then the strip stretches where it bends. */
  const onOneFace = (whole: boolean, extra: Partial<PlateProblem> = {}) => {
    const lower = { E: 320_000, nu: 0, thickness: 3, bottom: -1.5, expansion: 6.5e-6 };
    const upper = { E: 200_000, nu: 0, thickness: 2, bottom: 1.5, expansion: 1.1e-5 };
    const layered = { layers: [lower, upper], join: 'bonded' as const };
    const { bottom: _bottom, ...solid } = lower;
    const shape = { rectangle: [30, 4] as [number, number] };
    const problem = whole ? strip(layered) : { ...strip(solid), regions: [{ shape, section: layered }] };
    const [a1, a2] = [lower, upper].map(({ E, thickness }) => E * thickness);
    const neutral = (a2 * 2.5) / (a1 + a2);
    const EI = (a1 * 9 + a2 * 4) / 12 + (a1 * a2 * 2.5 ** 2) / (a1 + a2);
    return { lower, upper, a1, a2, neutral, EI, solved: solvedStress({ ...problem, ...extra }) };
  };

  it.each([true, false])(
    'with a layer on one face is M E (z - neutral) / EI (composite beam), all over it: %s',
    (whole) => {
      const { lower, upper, neutral, EI, solved } = onOneFace(whole);
      [lower, upper].forEach(({ E, bottom, thickness }, i) => {
        for (const face of [0, 1] as const) {
          const expected = (M * E * (bottom + face * thickness - neutral)) / EI;
          expect(Math.abs(stressNear(solved, [0, 0], i, face).sxx - expected)).toBeLessThan((0.005 * M * E * 2.5) / EI);
        }
      });
    },
  );

  it.each([true, false])('in two layers heated alike is that of Timoshenko (1925), all over the strip: %s', (whole) => {
    // No force and no moment: sigma = E (e + k (z - neutral) - alpha dT), e the mean free strain, k that of the pair.
    const rise = 65;
    const { lower, upper, a1, a2, neutral, EI, solved } = onOneFace(whole, {
      loads: [],
      temperature: { change: rise },
    });
    const [free1, free2] = [lower, upper].map(({ expansion }) => expansion * rise);
    const mean = (a1 * free1 + a2 * free2) / (a1 + a2);
    const k = (a1 * free1 * -neutral + a2 * free2 * (2.5 - neutral)) / EI;
    [lower, upper].forEach(({ E, bottom, thickness, expansion }, i) => {
      for (const face of [0, 1] as const) {
        const z = bottom + face * thickness;
        const expected = E * (mean + k * (z - neutral) - expansion * rise);
        expect(Math.abs(stressNear(solved, [0, 0], i, face).sxx - expected)).toBeLessThan(0.005 * E * free2);
      }
    });
  });

  it('is nought in a free plate under a gradient, and E alpha dT/(2 (1 - nu)) in a clamped one (Timoshenko)', () => {
    const problem = (held: PlateProblem['edges'], supports: PlateProblem['supports']): PlateProblem => ({
      plate: 1,
      outline: { rectangle: [20, 20] },
      section: { E: 300_000, nu: 0.25, thickness: 2 },
      edges: held,
      supports,
      temperature: { gradient: 10, alpha: 7e-6 },
      mesh: { size: 2 },
    });
    const clamped = solvedStress(problem([{ along: 'all', held: 'clamped' }], []));
    const expected = (-300_000 * 7e-6 * 10) / (2 * 0.75);
    expect(stressNear(clamped, [1, 2], 0, 1).sxx).toBeCloseTo(expected, 6);
    const free = solvedStress(problem([], [{ at: [-5, -5] }, { at: [5, -5] }, { at: [0, 5] }]));
    for (const value of free.stress) expect(Math.abs(value)).toBeLessThan(1e-6 * Math.abs(expected));
  });
});

describe('stress under a bearing', () => {
  const [a, nu, q] = [40, 0.25, 0.02];

  // The load of a disc smaller than the plate is thick counts over Roark's larger one.
  it.each([
    [6, 2],
    [2, 8],
    [1, 3],
    [0, 5],
  ])('disc of %d mm on a clamped round plate of %d mm: Roark, Table 11.2 (memory)', (diameter, thickness) => {
    const problem: PlateProblem = {
      plate: 1,
      outline: { circle: 2 * a },
      section: { E: 300_000, nu, thickness },
      edges: [{ along: 'all', held: 'clamped' }],
      supports: [{ at: [0, 0], diameter }],
      loads: [{ over: 'all', pressure: q }],
      mesh: { size: 2 },
    };
    const { structure, part, stress, reactions } = solvedStress(problem);
    const bearing = bearingOn(part, structure.locator, 0, [0, 0], diameter)!;
    const faces = bearingFaces(part, bearing, structure.rigidities, stress, reactions[0]);
    // Clamped, uniform: (1 + nu) q a^2/16; force over a small disc r0': (1 + nu) P/(4 pi) ln(a/r0').
    const r0 =
      diameter / 2 < thickness / 2
        ? Math.sqrt(1.6 * (diameter / 2) ** 2 + thickness ** 2) - 0.675 * thickness
        : diameter / 2;
    const moment = ((1 + nu) * q * a * a) / 16 + (((1 + nu) * reactions[0]) / (4 * Math.PI)) * Math.log(a / r0);
    const expected = (6 * moment) / thickness ** 2;
    expect(expected).toBeLessThan(0);
    const [board, device] = faces;
    expect(relative(device.stress[0], expected)).toBeLessThan(0.02);
    expect(relative(device.stress[1], expected)).toBeLessThan(0.02);
    expect(board.stress[0]).toBeCloseTo(-device.stress[0], 9);
  });

  it('has an equivalent radius that meets the real one near half the thickness', () => {
    expect(equivalentRadius(0, 4)).toBeCloseTo(0.325 * 4, 12);
    expect(equivalentRadius(2, 4)).toBe(2);
    expect(relative(equivalentRadius(2 - 1e-9, 4), 2)).toBeLessThan(0.02);
  });

  it('covers the nodes within that radius and none beyond', () => {
    const mesh = rectangleMesh(10, 10);
    const bearing = { fastener: 0, at: [5, 5] as const, radius: 2.1, ring: [] };
    discsOver(mesh, [bearing]).forEach((index, node) => {
      expect(index).toBe(Math.hypot(mesh.x[node] - 5, mesh.y[node] - 5) < 2.1 ? 0 : -1);
    });
  });
});
