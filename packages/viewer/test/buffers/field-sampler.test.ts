import { describe, expect, it } from 'vitest';
import { fieldSampler, rayOnField } from '../../src/buffers/field-sampler.ts';
import { gridMesh, nodal } from './grid-mesh.ts';

const mesh = gridMesh(20, 10, 80, 40);

describe('fieldSampler', () => {
  it('reads a linear field exactly anywhere, and nothing off the plate', () => {
    const sampler = fieldSampler(
      mesh,
      nodal(mesh, (x, y) => 0.02 * x - 0.01 * y),
    );
    expect(sampler.at(11.3, -7.9)).toBeCloseTo(0.02 * 11.3 + 0.01 * 7.9, 12);
    expect(sampler.at(40, 20)).toBeCloseTo(0.6, 12);
    expect(sampler.at(40.1, 0)).toBeNull();
  });
});

describe('rayOnField', () => {
  it('meets the exaggerated face, not the flat one', () => {
    const sampler = fieldSampler(
      mesh,
      nodal(mesh, (x) => 0.03 * (1 - (x / 40) ** 2)),
    );
    const [z, scale] = [2, 100];
    const found = rayOnField(sampler, [-40, -60, 80], [0.45, 0.6, -0.66], z, scale);
    expect(found).not.toBeNull();
    const { x, y, deviation } = found!;
    const t = (z + scale * deviation - 80) / -0.66;
    expect(x).toBeCloseTo(-40 + 0.45 * t, 2);
    expect(y).toBeCloseTo(-60 + 0.6 * t, 2);
    expect(deviation).toBeCloseTo(sampler.at(x, y)!, 4);
  });

  it('finds nothing beside the plate or along it', () => {
    const sampler = fieldSampler(
      mesh,
      nodal(mesh, () => 0),
    );
    expect(rayOnField(sampler, [200, 0, 10], [0, 0, -1], 0, 1)).toBeNull();
    expect(rayOnField(sampler, [0, 0, 10], [1, 0, 0], 0, 1)).toBeNull();
  });
});
