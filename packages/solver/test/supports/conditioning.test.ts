import { describe, expect, it } from 'vitest';
import type { PlateSupport } from '../../src/plate/plate-problem.ts';
import { onThree, solved } from '../structure/solved.ts';

/** Four supports, rigid or springs `k` times the given, on a plate with a modulus `k` times as large. */
const four = (k: number, last: Partial<PlateSupport> = {}) =>
  solved({
    ...onThree,
    section: { E: 66000 * k, nu: 0.29, thickness: 4.5 },
    supports: [...onThree.supports!.slice(0, 2), { at: [5, 16], stiffness: 3e4 * k }, { at: [-22, 15], ...last }],
    loads: [{ over: { rectangle: [20, 12], centre: [4, 1] }, force: 90 }],
  });

describe('a plate without supports', () => {
  it('is held by its clamped edges: w = 0.00126 q a^4/D in the middle of a square (Timoshenko; from memory)', () => {
    const [q, a, D] = [-0.01, 40, 5e5];
    const { cases, structure } = solved({
      ...onThree,
      outline: { rectangle: [a, a] },
      section: { D, nu: 0.3 },
      theory: 'thin',
      edges: [{ along: 'all', held: 'clamped' }],
      supports: [],
      loads: [{ over: 'all', pressure: q }],
      mesh: { size: 4 },
    });
    const [{ u, reactions, letGo }] = cases;
    expect([reactions.length, letGo.size]).toEqual([0, 0]);
    const lowest = Math.min(...Array.from(structure.mesh.x, (_, i) => u[3 * i]));
    expect(lowest / ((0.00126 * q * a ** 4) / D)).toBeCloseTo(1, 1);
  });
});

describe('supports of plates from soft to stiff', () => {
  it('share a load alike where springs and plate are stiffer alike, and give way by as much less', () => {
    const [one] = four(1).cases;
    for (const k of [1e-6, 1e-3, 1e2]) {
      const [other] = four(k).cases;
      one.reactions.forEach((reaction, i) => {
        expect(other.reactions[i] / reaction).toBeCloseTo(1, 8);
      });
      expect((k * other.seats[2]) / one.seats[2]).toBeCloseTo(1, 8);
    }
  });

  it('are refused where two rigid ones stand in one place, and taken a little apart or with a stiffness', () => {
    const beside = (k: number, by: number) => () => four(k, { at: [-25 + by, -15] });
    for (const k of [1e-6, 1, 1e2]) {
      expect(beside(k, 0)).toThrow(
        expect.objectContaining({ code: 'MECHANISM', message: expect.stringContaining('same place') }),
      );
      expect(beside(k, 0.5)).not.toThrow();
      expect(() => four(k, { at: [-25, -15], stiffness: 1e5 * k })).not.toThrow();
    }
  });
});
