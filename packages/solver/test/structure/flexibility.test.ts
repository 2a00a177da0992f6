import { describe, expect, it } from 'vitest';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import {
  atNodes,
  complianceOf,
  loadField,
  massOver,
  seen,
  supportAt,
  unitField,
} from '../../src/structure/flexibility.ts';
import { solved } from './solved.ts';

/** A rhombus with one slanted side simply held and one clamped: held without supports, with turned axes. */
const plate: PlateProblem = {
  plate: 1,
  outline: {
    polygon: [
      [-30, -20],
      [20, -20],
      [30, 20],
      [-20, 20],
    ],
  },
  section: { E: 66000, nu: 0.29, thickness: 4.5 },
  edges: [
    { along: { from: [20, -20], to: [30, 20] }, held: 'simple' },
    { along: { from: [-30, -20], to: [20, -20] }, held: 'clamped' },
  ],
  theory: 'shear',
  mesh: { size: 8 },
};
const [a, b] = [
  [-8, 4],
  [6, -3],
] as [number, number][];
const stages = solved({ ...plate, loads: [{ at: a, force: 1 }] });
const on = (load: { at: [number, number]; force: number }) =>
  solved({ ...plate, loads: [load] }, { meshed: stages.meshed });

describe('parts that answers for many placements are put together from', () => {
  it('deflect under a unit force of a support as under a unit load there', () => {
    const { structure } = stages;
    const support = supportAt(structure, { at: b }, 0);
    const nodes = Uint32Array.from(structure.mesh.x.keys());
    const field = atNodes(structure, unitField(structure, support), nodes);
    const expected = on({ at: b, force: 1 }).cases[0].u;
    const largest = Math.max(...expected.map(Math.abs));
    expect(structure.holds.turned.length).toBeGreaterThan(0);
    field.forEach((value, i) => {
      expect(Math.abs(value - expected[i])).toBeLessThan(1e-9 * largest);
    });
    // Some nodes alone, in the order asked for; the field itself stays in the axes of the holds.
    const some = Uint32Array.of(7, 2);
    expect([...atNodes(structure, unitField(structure, support), some)]).toEqual([
      ...field.subarray(21, 24),
      ...field.subarray(6, 9),
    ]);
  });

  it('are reciprocal: what a load at one place moves at another (Maxwell)', () => {
    const { structure } = stages;
    const [one, other] = [supportAt(structure, { at: a }, 0), supportAt(structure, { at: b }, 1)];
    const compliance = complianceOf(one, other);
    expect(compliance).toBeGreaterThan(0);
    for (const value of [
      complianceOf(other, one),
      seen(other, unitField(structure, one)),
      seen(one, unitField(structure, other)),
      seen(other, loadField(structure, [...stages.loadings.values()][0])),
    ])
      expect(value / compliance).toBeCloseTo(1, 9);
  });

  it('leave the fields they are read from as they are', () => {
    const { structure } = stages;
    const field = unitField(structure, supportAt(structure, { at: b }, 0));
    const before = field.slice();
    atNodes(structure, field, Uint32Array.of(0));
    expect(field).toEqual(before);
  });

  it('name a support that is off the plate', () => {
    expect(() => supportAt(stages.structure, { at: [90, 0] }, 3)).toThrow(
      expect.objectContaining({ code: 'OUTSIDE', path: 'supports.3.at' }),
    );
  });

  it('integrate w over the plate or part of it: a uniform w gives the area', () => {
    const { structure } = stages;
    const whole = massOver(structure, 'all', '');
    expect(whole.area).toBeCloseTo(50 * 40, 9);
  });
});
