import { describe, expect, it } from 'vitest';
import { holdsOf } from '../../src/assembly/holds.ts';
import { blockPattern } from '../../src/assembly/pattern.ts';
import { assembleStiffness } from '../../src/assembly/stiffness.ts';
import { thermalLoad } from '../../src/assembly/thermal.ts';
import { multiply } from '../../src/linear-algebra/multiply.ts';
import { nodalMoments } from '../../src/results/moments.ts';
import { freeStrain } from '../../src/section/free-strain.ts';
import { rigidityOf } from '../../src/section/rigidity-of.ts';
import { irregularMesh } from './sample-meshes.ts';
import { solvePlate } from './solve-plate.ts';

// Timoshenko and Woinowsky-Krieger, Art. 14: a free plate takes the curvature alpha dT/t without stress; a clamped one
// stays flat under the moment D (1 + nu) alpha dT/t.
const section = { E: 320000, nu: 0.22, thickness: 5 };
const rigidity = rigidityOf(section, 'section');
const free = freeStrain(section, { change: 0, gradient: 12, over: null, alpha: 6.5e-6 }, 'section');
const k0 = free.curvature;
const mesh = irregularMesh(5);
const largest = (values: Iterable<number>) => Math.max(...[...values].map(Math.abs));

describe('temperature gradient', () => {
  it.each(['thin', 'shear'] as const)('bends a free plate to a dome without moments, %s', (theory) => {
    const dome = Float64Array.from({ length: 3 * mesh.x.length }, (_, p) => {
      const [x, y] = [mesh.x[Math.floor(p / 3)], mesh.y[Math.floor(p / 3)]];
      return k0 * [-(x * x + y * y) / 2, -y, x][p % 3];
    });
    const f = thermalLoad(mesh, [rigidity], theory, [free]);
    const K = assembleStiffness(mesh, blockPattern(mesh), [rigidity], theory, [], holdsOf(mesh, []));
    const held = multiply(K, dome);
    expect(largest(held.map((v, p) => v - f[p]))).toBeLessThan(1e-11 * largest(f));
    const full = rigidity.bending[0] * 1.22 * k0;
    expect(largest(nodalMoments(mesh, [rigidity], theory, dome, [free]))).toBeLessThan(1e-11 * full);
  });

  it('leaves a clamped plate flat under the full moment', () => {
    const load = thermalLoad(mesh, [rigidity], 'thin', [free]);
    const { u } = solvePlate({ mesh, rigidity, load, edges: [{ along: 'all', held: 'clamped' }] });
    expect(largest(u)).toBeLessThan(1e-15);
    const full = -rigidity.bending[0] * 1.22 * k0;
    const moments = nodalMoments(mesh, [rigidity], 'thin', u, [free]);
    moments.forEach((m, i) => {
      expect(Math.abs(m - (i % 3 === 2 ? 0 : full))).toBeLessThan(1e-9 * Math.abs(full));
    });
  });
});
