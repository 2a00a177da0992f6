import { type HeadModel, materialPresets, solveHead } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import kestrelBaseline from '../../models/kestrel-baseline.json';
import kestrelBoth from '../../models/kestrel-both.json';

const both = kestrelBoth as unknown as HeadModel;
const joined = (join: 'sliding' | 'bonded' | 'bracket', cases: HeadModel['cases'] = both.cases): HeadModel => ({
  ...both,
  frame: { ...both.frame!, join },
  cases,
});
const bowOf = (model: HeadModel) => solveHead(model).result.verdict.criteria.find((c) => c.criterion === 'bow')!;

describe('a frame joined to one face of the body', () => {
  const sliding = bowOf(joined('sliding'));
  const bonded = bowOf(joined('bonded'));

  it('stiffens the head more when it is bonded', () => {
    expect(bonded.value).toBeGreaterThan(0);
    expect(bonded.value).toBeLessThan(0.6 * sliding.value);
  });

  it('lies between both ends when it is screwed, and is judged by the worse', () => {
    const bracket = bowOf(joined('bracket'));
    expect(bracket.bracket).toEqual({ sliding: sliding.value, bonded: bonded.value });
    expect(bracket.value).toBe(sliding.value);
    const { remarks } = solveHead(joined('bracket')).result.verdict;
    expect(remarks.some((remark) => /between sliding on the body.*bonded to it/.test(remark))).toBe(true);
  });

  it('bonded to the board face or to the device face bends under preload alike', () => {
    // Mirrored about the body's middle: the plate does not know which way is up.
    const onDevice = {
      ...joined('bonded'),
      frame: { ...both.frame!, join: 'bonded' as const, side: 'device' as const },
    };
    const rigid = (model: HeadModel): HeadModel => ({
      ...model,
      fasteners: model.fasteners.map((fastener) => ({ ...fastener, stiffness: 1e6 })),
    });
    const [a, b] = [bowOf(rigid(joined('bonded'))), bowOf(rigid(onDevice))];
    expect(Math.abs(a.value / b.value - 1)).toBeLessThan(1e-9);
  });

  it('bows the head towards the frame when both are heated, the frame growing more', () => {
    const bow = (join: 'sliding' | 'bonded', temperature: number) => {
      const { modulus: _modulus, ...steel } = materialPresets[both.frame!.material];
      const { strength: _strength, title: _title, basis: _basis, ...frame } = steel;
      const model = {
        ...joined(join, [{ name: 'heated', touched: 'all', temperature }]),
        materials: { [both.frame!.material]: frame },
      };
      return solveHead(model, { quality: 'live' }).result.cases[0].bow.value;
    };
    // Frame on the board side (-z), stainless on alumina, no load: convex towards the board.
    expect(bow('bonded', 85)).toBeLessThan(-0.002);
    // Linear in the rise from 20 degC.
    expect(bow('bonded', 150) / bow('bonded', 85)).toBeCloseTo(2, 9);
    expect(Math.abs(bow('sliding', 85))).toBeLessThan(1e-9);
    const { remarks } = solveHead(joined('bonded', [{ name: 'heated', temperature: 85 }]), { quality: 'live' }).result
      .verdict;
    // 9.3e-6 x 65 K x 47.7 mm from the middle.
    expect(remarks.some((remark) => /slide on the board.*outermost moves by 28\.\d um/.test(remark))).toBe(true);
  });
});

describe('a frame that softens with heat', () => {
  it('bends as a frame of that modulus does, each case with its own', () => {
    const at = (temperature: number | undefined, materials: HeadModel['materials']) =>
      solveHead(
        {
          ...joined('sliding', [{ name: 'cold' }, { name: 'as asked', temperature }]),
          fasteners: both.fasteners.map((fastener) => ({ ...fastener, stiffness: 1e5 })),
          materials,
        },
        { quality: 'live' },
      ).result.cases.map(({ bow }) => bow.value);
    const steel = { E: 200_000, nu: 0.27, expansion: 1e-5 };
    const own = { ...steel, modulus: [[120, 150_000] as [number, number]] };
    const name = both.frame!.material;
    const [cold, hot] = at(70, { [name]: own });
    // Half way from 20 to 120 degC.
    const [softer] = at(undefined, { [name]: { ...steel, E: 175_000 } });
    expect(cold).toBe(at(undefined, { [name]: steel })[0]);
    expect(hot / softer).toBeCloseTo(1, 9);
    expect(hot).toBeGreaterThan(1.02 * cold);
    expect(() => at(121, { [name]: own })).toThrowError(
      expect.objectContaining({ code: 'OUT_OF_RANGE', path: 'cases.1.temperature' }),
    );
  });
});

describe('a body without frame, warmer on the device side', () => {
  // Free plate: a sphere of curvature alpha dT/t (Timoshenko and Woinowsky-Krieger, Art. 14), held by three points.
  const { frame: _frame, ...bare } = kestrelBaseline as unknown as HeadModel;
  const corners: [number, number][] = [
    [-34, -21],
    [34, -21],
    [0, 21],
  ];
  const model: HeadModel = {
    ...bare,
    theory: 'thin',
    sites: { ...bare.sites, probes: { ...bare.sites.probes, preload: 0 } },
    fasteners: corners.map((at, i) => ({ name: `F${i + 1}`, at, bearing: 0, stiffness: 'rigid' })),
    cases: [{ name: 'gradient', gradient: 4 }],
    body: { ...bare.body, material: 'alumina-96' },
  };

  it('bows as the sphere does above the plane through its three fasteners', () => {
    const { cases, sites } = solveHead(model).result;
    const k0 = (6.5e-6 * 4) / model.body.thickness;
    const sphere = ([x, y]: readonly number[]) => (-k0 / 2) * (x * x + y * y);
    const [low, high] = [sphere(corners[0]), sphere(corners[2])];
    const above = ([x, y]: readonly number[]) => sphere([x, y]) - low - ((high - low) * (y + 21)) / 42;
    // Highest where the sphere's top is nearest: check every site at the point that was reported.
    expect(cases[0].sites).toHaveLength(sites.length);
    for (const { bow, at } of cases[0].sites) expect(Math.abs(bow / above(at) - 1)).toBeLessThan(1e-6);
    expect(cases[0].bow.value).toBeGreaterThan(0);
  });
});
