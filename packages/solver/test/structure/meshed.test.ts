import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { unknownsOf } from '../../src/structure/structure.ts';
import { onThree, solved } from './solved.ts';

const cut = { rectangle: [2, 50] as [number, number], centre: [10, 0] as [number, number] };

describe('a meshed plate', () => {
  it('is refused in two parts, with a place on one that is not the first', () => {
    let thrown: unknown;
    try {
      solved({ ...onThree, openings: [cut] });
    } catch (fault) {
      thrown = fault;
    }
    expect(thrown).toMatchObject({ code: 'DISCONNECTED', path: 'outline', details: { parts: 2 } });
    expect(String(thrown)).toMatch(
      /falls into 2 parts that are not joined; one of them is at \(-?\d+\.\d\d, -?\d+\.\d\d\)/,
    );
  });

  it('is of one piece around an opening that leaves a bridge', () => {
    const { structure } = solved({ ...onThree, openings: [{ ...cut, rectangle: [2, 30] }] });
    expect(structure.mesh.x.some((x) => x > 11)).toBe(true);
  });

  it('follows the areas that results are measured on, numbered after its regions', () => {
    const area: Point[] = [
      [-5, -5],
      [5, -5],
      [5, 5],
      [-5, 5],
    ];
    const region = { shape: { rectangle: [20, 20] as [number, number] }, section: onThree.section };
    const { mesh, firstArea, section } = solved({ ...onThree, regions: [region] }, { areas: [area] }).structure;
    expect(firstArea).toBe(2);
    const areaOf = (t: number): number => {
      const [a, b, c] = mesh.triangles.subarray(3 * t, 3 * t + 3);
      const [ax, ay, bx, by] = [
        mesh.x[b] - mesh.x[a],
        mesh.y[b] - mesh.y[a],
        mesh.x[c] - mesh.x[a],
        mesh.y[c] - mesh.y[a],
      ];
      return (ax * by - ay * bx) / 2;
    };
    const total = (indices: Uint32Array, index: number) =>
      indices.reduce((sum, each, t) => sum + (each === index ? areaOf(t) : 0), 0);
    expect(total(mesh.region, firstArea)).toBeCloseTo(100, 9);
    expect(total(section, 1)).toBeCloseTo(400, 9);
    expect(total(section, 0)).toBeCloseTo(2000, 9);
  });

  it('has three unknowns a node, and two a node and side more where it stretches', () => {
    const thin = solved(onThree).structure;
    const nodes = thin.mesh.x.length;
    const triangles = thin.mesh.triangles.length / 3;
    expect(unknownsOf(thin)).toBe(3 * nodes);
    const stretched = solved(onThree, { coupled: true }).structure;
    expect(stretched.mesh).toEqual(thin.mesh);
    // Euler: nodes - sides + triangles = 1 without holes.
    expect(unknownsOf(stretched)).toBe(3 * nodes + 2 * (nodes + (nodes + triangles - 1)));
  });
});
