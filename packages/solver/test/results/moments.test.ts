import { describe, expect, it } from 'vitest';
import { locator } from '../../src/mesh/locate.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { cornerGroups } from '../../src/results/corner-groups.ts';
import { faceStresses } from '../../src/results/face-stress.ts';
import { momentsAt, nodalMoments } from '../../src/results/moments.ts';
import { nodalCurvatures } from '../../src/results/nodal-strain.ts';
import { stressPart } from '../../src/results/stress-part.ts';
import { rigidityOf } from '../../src/section/rigidity-of.ts';
import { stressLayers } from '../../src/section/stress-layers.ts';
import { rectangleMesh } from '../assembly/sample-meshes.ts';

const plain = rectangleMesh(4, 8);
/** Stiffer to the right of x = 4. */
const mesh: Mesh = {
  ...plain,
  region: plain.region.map((_, t) =>
    plain.x[plain.triangles[3 * t]] + plain.x[plain.triangles[3 * t + 1]] + plain.x[plain.triangles[3 * t + 2]] > 12
      ? 1
      : 0,
  ),
};
const rigidities = [rigidityOf({ D: 100, nu: 0.3 }, ''), rigidityOf({ D: 700, nu: 0 }, '')];
/** w = -(x^2 + 2 y^2)/2: kxx = 1, kyy = 2. */
const u = Float64Array.from({ length: 3 * mesh.x.length }, (_, p) => {
  const [x, y] = [mesh.x[Math.floor(p / 3)], mesh.y[Math.floor(p / 3)]];
  return [-(x * x + 2 * y * y) / 2, -2 * y, x][p % 3];
});

describe('moments', () => {
  const find = locator(mesh);
  const moments = nodalMoments(mesh, rigidities, 'thin', u);

  it('are never averaged across sections: they jump with the section along an interface', () => {
    mesh.region.forEach((section, t) => {
      for (let c = 0; c < 3; c++) {
        const [mxx, myy, mxy] = moments.subarray(9 * t + 3 * c, 9 * t + 3 * c + 3);
        expect(mxx).toBeCloseTo(section === 0 ? 160 : 700, 9);
        expect(myy).toBeCloseTo(section === 0 ? 230 : 1400, 9);
        expect(mxy).toBeCloseTo(0, 9);
      }
    });
  });

  it('leave a curvature that jumps with the section on its side of the interface', () => {
    // Flat to the left of x = 4, w = -(x - 4)^2/2 to the right.
    const bent = Float64Array.from({ length: 3 * mesh.x.length }, (_, p) => {
      const beyond = Math.max(0, mesh.x[Math.floor(p / 3)] - 4);
      return [-(beyond ** 2) / 2, 0, beyond][p % 3];
    });
    const jumping = nodalMoments(mesh, rigidities, 'thin', bent);
    jumping.forEach((value, i) => {
      if (i % 3 === 0) expect(value).toBeCloseTo(mesh.region[Math.floor(i / 9)] === 0 ? 0 : 700, 9);
    });
    const layers = [1, 2].map((thickness) => {
      const section = { E: 1000, nu: 0, thickness };
      return stressLayers(section, rigidityOf(section, ''))!;
    });
    const part = stressPart({ mesh, section: mesh.region, layers }, cornerGroups(mesh));
    const [curvature] = nodalCurvatures(mesh, rigidities, 'thin', [bent]);
    const stress = faceStresses(part, { curvature, stretch: null });
    part.placeAt.forEach((place, corner) => {
      // E z kappa on the upper face, z = 1 to the right.
      expect(stress[6 * place + 3]).toBeCloseTo(mesh.region[Math.floor(corner / 3)] === 0 ? 0 : 1000, 9);
    });
  });

  it('are linear between nodes of one section', () => {
    expect(momentsAt(mesh, find, moments, [2.3, 5.9], '').mxx).toBeCloseTo(160, 9);
    expect(momentsAt(mesh, find, moments, [7.3, 5.9], '').myy).toBeCloseTo(1400, 9);
    // mxx = x as nodal values reads x in between.
    const linear = moments.map((_, i) => (i % 3 === 0 ? mesh.x[mesh.triangles[i / 3]] : 0));
    expect(momentsAt(mesh, find, linear, [1.234, 0.77], '').mxx).toBeCloseTo(1.234, 12);
  });

  it('are refused off the plate', () => {
    expect(() => momentsAt(mesh, find, moments, [8.5, 1], 'report.at.3')).toThrowError(
      expect.objectContaining({ code: 'OUTSIDE', path: 'report.at.3' }),
    );
  });
});
