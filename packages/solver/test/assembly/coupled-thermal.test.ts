import { describe, expect, it } from 'vitest';
import { assembleCoupled } from '../../src/assembly/coupled-stiffness.ts';
import { coupledThermalLoad } from '../../src/assembly/coupled-thermal.ts';
import { multiply } from '../../src/linear-algebra/multiply.ts';
import { loose, membranes, mesh, placeOf, plane, rigidities } from './coupled-samples.ts';

// A free body of one material takes its free strain and curvature without stress (Timoshenko and Goodier, Theory of
// Elasticity, thermal stress: a linear field strains a free body without stress).
const [e0, k0] = [3e-4, 2e-5];
const n = mesh.x.length;
const whole = { ...mesh, region: new Uint32Array(mesh.region.length) };
const largest = (values: Iterable<number>) => Math.max(...[...values].map(Math.abs));

describe('heat in a plate that stretches where it bends', () => {
  it.each(['thin', 'shear'] as const)('is the load under which a free plate takes its free strains, %s', (theory) => {
    const [section, membrane] = [[rigidities[0]], [membranes[0]]];
    const free = { curvature: k0, strain: e0 };
    // e + c k is the strain of the neutral surface.
    const strain = e0 - membranes[0].offset[0] * k0;
    const u = new Float64Array(3 * plane.pattern.n);
    for (let i = 0; i < n; i++) {
      const [x, y] = [mesh.x[i], mesh.y[i]];
      u.set([(-k0 * (x * x + y * y)) / 2, -k0 * y, k0 * x], 3 * i);
    }
    for (let row = n; row < plane.pattern.n; row++) u.set([0, ...placeOf(row).map((c) => strain * c)], 3 * row);
    const f = coupledThermalLoad(whole, plane, section, membrane, theory, [free]);
    const K = assembleCoupled(whole, plane, section, membrane, theory, [], loose(plane.pattern.n));
    expect(largest(multiply(K, u).map((force, i) => force - f[i]))).toBeLessThan(1e-10 * largest(f));
    expect(largest(f)).toBeGreaterThan(1);
  });

  it('is in balance with itself, whatever the sections', () => {
    const free = [
      { curvature: k0, strain: e0 },
      { curvature: -2 * k0, strain: 3 * e0 },
    ];
    const f = coupledThermalLoad(mesh, plane, rigidities, membranes, 'thin', free);
    // Both forces and the moment about the origin.
    const sums = [0, 0, 0];
    for (let row = n; row < plane.pattern.n; row++) {
      const [x, y] = placeOf(row);
      const [fx, fy] = [f[3 * row + 1], f[3 * row + 2]];
      sums[0] += fx;
      sums[1] += fy;
      sums[2] += x * fy - y * fx;
    }
    expect(largest(sums)).toBeLessThan(1e-10 * largest(f));
  });
});
