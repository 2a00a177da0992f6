import { describe, expect, it } from 'vitest';
import { type LayerSolid, layerSolid, rimEdges } from '../../src/buffers/layer-solid.ts';
import { gridMesh } from './grid-mesh.ts';

/** Volume by the divergence theorem, and the vector sum of the faces' areas, which is zero for a closed solid. */
function volumeAndClosure({ position, index }: LayerSolid): { volume: number; closure: number } {
  let volume = 0;
  const sum = [0, 0, 0];
  const at = (v: number): number[] => [0, 1, 2].map((axis) => position[3 * v + axis]);
  for (let f = 0; f < index.length; f += 3) {
    const [a, b, c] = [at(index[f]), at(index[f + 1]), at(index[f + 2])];
    const [u, v] = [b, c].map((p) => p.map((value, axis) => value - a[axis]));
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    volume += (a[0] * n[0] + a[1] * n[1] + a[2] * n[2]) / 6;
    n.forEach((value, axis) => {
      sum[axis] += value / 2;
    });
  }
  return { volume, closure: Math.hypot(...sum) };
}

describe('layerSolid', () => {
  const mesh = gridMesh(8, 4, 40, 20);
  const all = Uint32Array.from({ length: mesh.triangles.length / 3 }, (_, t) => t);

  it('closes over the whole plate with the volume of area times thickness, faces outward', () => {
    const solid = layerSolid(mesh, all, rimEdges(mesh, all), -2, 1);
    const { volume, closure } = volumeAndClosure(solid);
    expect(volume).toBeCloseTo(40 * 20 * 3, 3);
    expect(closure).toBeLessThan(1e-3);
  });

  it('closes around a hole', () => {
    const middle = (t: number): boolean => Math.floor(t / 2) % 8 === 3 && Math.floor(t / 16) === 1;
    const holed = all.filter((t) => !middle(t));
    const { volume, closure } = volumeAndClosure(layerSolid(mesh, holed, rimEdges(mesh, holed), 0, 2));
    expect(volume).toBeCloseTo((40 * 20 - 25) * 2, 3);
    expect(closure).toBeLessThan(1e-3);
  });

  it('keeps the node of every vertex, so that the field can move it', () => {
    const solid = layerSolid(mesh, all, rimEdges(mesh, all), -2, 1);
    solid.node.forEach((v, i) => {
      expect(solid.position[3 * i]).toBeCloseTo(mesh.x[v], 5);
      expect(solid.position[3 * i + 1]).toBeCloseTo(mesh.y[v], 5);
    });
  });
});
