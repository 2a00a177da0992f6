import { describe, expect, it } from 'vitest';
import { gatherField, nodalSlopes } from '../../src/buffers/nodal-field.ts';
import { gridMesh, nodal } from './grid-mesh.ts';

describe('nodalSlopes', () => {
  it('is exact for a tilted plane', () => {
    const mesh = gridMesh(5, 3, 30, 12);
    const slopes = nodalSlopes(
      mesh,
      nodal(mesh, (x, y) => 0.3 * x - 0.7 * y + 2),
    );
    for (let v = 0; v < mesh.x.length; v++) {
      expect(slopes[2 * v]).toBeCloseTo(0.3, 5);
      expect(slopes[2 * v + 1]).toBeCloseTo(-0.7, 5);
    }
  });

  it('gathers deviation, slopes and paint by node', () => {
    const out = gatherField(
      Uint32Array.from([2, 0]),
      Float64Array.from([1, 2, 3]),
      Float32Array.from([10, 11, 20, 21, 30, 31]),
      Float64Array.from([7, 8, 9]),
      new Float32Array(8),
    );
    expect([...out]).toEqual([3, 30, 31, 9, 1, 10, 11, 7]);
  });
});
