import { describe, expect, it } from 'vitest';
import { square } from './heads.ts';
import { runHere } from './run-here.ts';

describe('flathead plate', () => {
  it('answers with the contract of plate problems under --json', async () => {
    const { code, out } = await runHere(['plate', '-', '--json'], { input: JSON.stringify(square) });
    const result = JSON.parse(out);
    expect(code).toBe(0);
    expect(Object.keys(result).sort()).toEqual(
      [
        'w',
        'moments',
        'reactions',
        'flatness',
        'bestFitPlane',
        'mesh',
        'dofs',
        'load',
        'residual',
        'error',
        'timings',
      ].sort(),
    );
    // Navier series; Timoshenko & Woinowsky-Krieger, Table 8: 0.00406235 q a^4/D.
    const exact = (0.00406235 * 0.001 * 100 ** 4) / (200_000 / 12 / (1 - 0.3 ** 2));
    expect(result.w.at[0] / exact).toBeCloseTo(1, 2);
    expect(result.w.max.value / exact).toBeCloseTo(1, 2);
    expect(result.load).toBeCloseTo(10, 9);
    expect(result.moments.at[0]).toHaveProperty('mxy');
  });

  it('prints extremes, points and flatness otherwise', async () => {
    const { code, out } = await runHere(['plate', '-', '-v'], { input: JSON.stringify(square) });
    expect(code).toBe(0);
    expect(out).toMatch(/^Simply supported square\n/);
    expect(out).toMatch(/w max {2}0\.022\d mm at -?0\.\d\d, -?0\.\d\d/);
    expect(out).toMatch(/^ {2}1 +0\.00, 0\.00 +0\.022\d/m);
    expect(out).toMatch(/Flatness of the reported area: minimum zone/);
    expect(out).toMatch(/scaled residual/);
  });

  it('lists supports with their reactions', async () => {
    const corners = [
      [-50, -50],
      [50, -50],
      [50, 50],
      [-50, 50],
    ];
    const input = JSON.stringify({ ...square, edges: [], supports: corners.map((at, i) => ({ at, name: `P${i}` })) });
    const { out } = await runHere(['plate', '-'], { input });
    expect(out).toMatch(/^ {2}P2 +50\.00, 50\.00 +-2\.5 +\S+$/m);
  });
});
