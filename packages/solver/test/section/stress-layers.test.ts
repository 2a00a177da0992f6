import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { freeStrain, type Temperature } from '../../src/section/free-strain.ts';
import { holePeaks } from '../../src/section/hole-concentration.ts';
import { membraneOf } from '../../src/section/membrane-of.ts';
import { rigidityOf } from '../../src/section/rigidity-of.ts';
import type { Section } from '../../src/section/section.ts';
import { freeFaces, stressLayers } from '../../src/section/stress-layers.ts';

/*
 * Stress resultants of layers, `N = integral of sigma dz` and `M = integral of sigma z dz`, against the stiffness of the
 * section and against statics: what is free carries neither.
 */

const layers = [
  { E: 3.7e5, nu: 0.22, thickness: 4, bottom: -3, expansion: 6e-6 },
  { E: 2e5, nu: 0.22, thickness: 3, bottom: 1 },
  { E: 7e4, nu: 0.22, thickness: 1, bottom: 4, expansion: 2.3e-5 },
];
const solid: Section = { E: 3e5, nu: 0.22, thickness: 5, expansion: 8e-6 };
const bonded: Section = { layers, join: 'bonded' };
const sliding: Section = { layers, join: 'sliding' };
const temperatures: readonly Temperature[] = [
  { change: 70, gradient: 0, over: null, alpha: 1.2e-5 },
  { change: 0, gradient: 9, over: null, alpha: 1.2e-5 },
  { change: -30, gradient: 14, over: 11, alpha: 1.2e-5 },
];

const full = ([a, b, c, d, e, f]: Float64Array) => new Matrix([[a, b, c], [b, d, e], [c, e, f]]); // biome-ignore format: symmetric
const column = (values: readonly number[]) => Matrix.columnVector([...values]);

interface State {
  readonly strain: readonly number[];
  readonly curvature: readonly number[];
  readonly temperature?: Temperature;
}

/** Force and moment of all layers, and the sums of their sizes face by face. */
function resultants(section: Section, stretches: boolean, { strain, curvature, temperature }: State) {
  const membrane = stretches ? membraneOf(section, 's') : null;
  const own = stressLayers(section, rigidityOf(section, 's'), membrane) ?? [];
  const [force, moment] = [Matrix.zeros(3, 1), Matrix.zeros(3, 1)];
  let [forces, moments] = [0, 0];
  for (const layer of own) {
    const [lower, upper] = freeFaces(layer, temperature ?? null, stretches);
    const stress = layer.faces.map((z, face) => {
      const free = face === 0 ? lower : upper;
      const loose = [free, free, 0];
      return full(layer.stiffness).mmul(column(strain.map((e, k) => e + z * curvature[k] - loose[k])));
    });
    const [below, above] = layer.faces;
    const middle = Matrix.add(stress[0], stress[1]).div(2);
    const t = above - below;
    force.add(Matrix.mul(middle, t));
    // Simpson: stress times height is quadratic.
    for (const [s, z, weight] of [
      [stress[0], below, 1 / 6],
      [middle, (below + above) / 2, 4 / 6],
      [stress[1], above, 1 / 6],
    ] as const)
      moment.add(Matrix.mul(s, t * z * weight));
    for (const s of stress) {
      forces += t * s.get(0, 0) ** 2;
      moments += t ** 3 * s.get(0, 0) ** 2;
    }
  }
  return { force, moment, forces: Math.sqrt(forces), moments: Math.sqrt(moments), count: own.length };
}

const expectAlike = (a: Matrix, b: Matrix) =>
  expect(Matrix.sub(a, b).abs().max() / Math.max(1e-300, Matrix.abs(b).max())).toBeLessThan(1e-11);

describe('stresses in the layers of a section', () => {
  const curvature = [2e-4, -1e-4, 3e-5];
  const strain = [1e-3, 4e-4, -2e-4];

  it('add up to the moments of the section about its neutral surface, and to no force', () => {
    for (const section of [solid, bonded, sliding]) {
      const { force, moment, forces, count } = resultants(section, false, { strain: [0, 0, 0], curvature });
      expect(count).toBe(section === solid ? 1 : 3);
      expectAlike(moment, full(rigidityOf(section, 's').bending).mmul(column(curvature)));
      expect(force.abs().max()).toBeLessThan(1e-10 * forces);
    }
  });

  it('add up to force and moment about z = 0 where the plate stretches: N = A (e + C k), M = C N + D k', () => {
    for (const section of [solid, bonded]) {
      const { stretching, offset } = membraneOf(section, 's');
      const C = Matrix.from1DArray(3, 3, offset);
      const N = full(stretching).mmul(column(strain).add(C.mmul(column(curvature))));
      const own = full(rigidityOf(section, 's').bending).mmul(column(curvature));
      const { force, moment } = resultants(section, true, { strain, curvature });
      expectAlike(force, N);
      expectAlike(moment, own.add(C.transpose().mmul(N)));
    }
  });

  it.each(temperatures)(
    'carry neither force nor moment in a free plate: change $change, gradient $gradient over $over',
    (temperature) => {
      for (const section of [solid, bonded, sliding]) {
        const free = freeStrain(section, temperature, 's');
        const bent = [free.curvature, free.curvature, 0];
        const alone = resultants(section, false, { strain: [0, 0, 0], curvature: bent, temperature });
        // A solid one is without stress; rounding is counted in what holding it flat would take.
        const held = 3e5 * 1e-5 * 70 * 5;
        expect(alone.force.abs().max()).toBeLessThan(1e-10 * (alone.forces + held));
        expect(alone.moment.abs().max()).toBeLessThan(1e-10 * (alone.moments + 5 * held));
        if (section === solid) expect(alone.forces).toBeLessThan(1e-10 * held);
        if (free.strain === null) continue;
        const { offset } = membraneOf(section, 's');
        const e = free.strain - (offset[0] + offset[1]) * free.curvature;
        const plate = resultants(section, true, { strain: [e, e, 0], curvature: bent, temperature });
        expect(plate.force.abs().max()).toBeLessThan(1e-10 * (plate.forces + held));
        expect(plate.moment.abs().max()).toBeLessThan(1e-10 * (plate.moments + 5 * held));
      }
    },
  );

  it('are not told by given rigidities', () => {
    const given: Section = { D: 1e5, nu: 0.3 };
    expect(stressLayers(given, rigidityOf(given, 's'))).toBeNull();
  });

  it('spread a pressure over the layer that bends as one', () => {
    const depths = (section: Section) => stressLayers(section, rigidityOf(section, 's'))?.map(({ depth }) => depth);
    expect(depths(solid)).toEqual([5]);
    expect(depths(bonded)).toEqual([8, 8, 8]);
    expect(depths(sliding)).toEqual([4, 3, 1]);
  });

  it('peak at the widest part of the holes', () => {
    const drilled = { pitch: 1, diameter: 0.5, pattern: 'square' as const };
    const peaks = (holes: Parameters<typeof holePeaks>[0]) => {
      const section: Section = { E: 3e5, nu: 0.22, thickness: 5, holes };
      return stressLayers(section, rigidityOf(section, 's'))?.[0].holes;
    };
    expect(peaks(drilled)).toEqual(holePeaks(drilled));
    const bored = { ...drilled, counterbore: { diameter: 0.7, depth: 1, side: 'board' as const } };
    expect(peaks(bored)).toEqual(holePeaks({ ...drilled, diameter: 0.7 }));
  });
});
