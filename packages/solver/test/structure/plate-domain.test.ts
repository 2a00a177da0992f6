import { describe, expect, it } from 'vitest';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { solvePlate } from '../../src/solve-plate.ts';

const plate: PlateProblem = {
  plate: 1,
  outline: { rectangle: [60, 40] },
  section: { E: 66000, nu: 0.29, thickness: 4.5 },
  regions: [{ shape: { rectangle: [24, 60], centre: [4, 0] }, section: { E: 2e5, nu: 0.27, thickness: 3 } }],
  edges: [{ along: 'all', held: 'simple' }],
  loads: [{ over: 'all', force: 90 }],
  theory: 'shear',
  mesh: { size: 3 },
  report: { at: [[3, 2]], over: { rectangle: [60, 40] } },
};
const stripe = (height: number, centre = 0): PlateProblem => ({
  ...plate,
  regions: [{ ...plate.regions![0], shape: { rectangle: [24, height], centre: [4, centre] } }],
});

describe('shapes that reach far beyond the plate', () => {
  const near = solvePlate(plate);

  it('count with their part on the plate, on the same mesh', () => {
    for (const [height, centre] of [
      [1e5, 0],
      [6e4, 29_000],
    ]) {
      const far = solvePlate(stripe(height, centre));
      expect(far.mesh.nodes).toBeLessThan(1.1 * near.mesh.nodes);
      expect(far.w.at[0] / near.w.at[0]).toBeCloseTo(1, 4);
    }
  });

  it('cost no time where they are reported or loaded', () => {
    const over = { circle: 1e5, centre: [-0.6, 1.8] as [number, number] };
    const begun = performance.now();
    const far = solvePlate({ ...plate, loads: [{ over, force: 90 }], report: { at: [[3, 2]], over } });
    expect(far.w.at[0] / near.w.at[0]).toBeCloseTo(1, 4);
    expect(far.flatness!.minimumZone / near.flatness!.minimumZone).toBeCloseTo(1, 3);
    // Ten times what it takes; with the whole circle meshed it is a hundred times.
    expect(performance.now() - begun).toBeLessThan(1500);
  });
});

describe('shapes too narrow to follow', () => {
  const refusal = (change: Partial<PlateProblem>) => {
    try {
      solvePlate({ ...plate, ...change });
    } catch (thrown) {
      return thrown;
    }
    return null;
  };
  it('are refused with their path before any mesh is made', () => {
    const region = { ...plate.regions![0], shape: { rectangle: [300, 0.001] as [number, number] } };
    expect(refusal({ regions: [plate.regions![0], region] })).toMatchObject({
      code: 'TOO_LARGE',
      path: 'regions.1.shape',
      message: expect.stringMatching(/0\.0010 mm wide.*Widen, shorten or remove it\.$/),
    });
    expect(refusal({ report: { over: { rectangle: [300, 0.001] } } })).toMatchObject({ path: 'report.over' });
    expect(refusal({ outline: { rectangle: [60, 0.001] }, regions: [], report: {} })).toMatchObject({
      code: 'TOO_LARGE',
      path: 'outline',
    });
  });

  it('are followed where they are short, or no narrower than the elements', () => {
    const region = { ...plate.regions![0], shape: { rectangle: [2, 0.001] as [number, number] } };
    expect(refusal({ regions: [region] })).toBeNull();
  });
});
