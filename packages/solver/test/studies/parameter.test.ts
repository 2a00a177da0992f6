import { describe, expect, it } from 'vitest';
import { placeParameters, variantOf } from '../../src/studies/parameter.ts';
import { faultOf } from '../model/fault-of.ts';
import { twoByTwo } from '../model/two-by-two.ts';

const set = (parameter: Parameters<typeof placeParameters>[1][number], setting: number | number[] | string) =>
  variantOf(placeParameters(twoByTwo, [parameter]), [setting]);

describe('a parameter', () => {
  it('sets a value', () => {
    expect(set({ path: 'body.thickness' }, 5.5).body.thickness).toBe(5.5);
    expect(set({ path: 'body.material' }, 'peek').body.material).toBe('peek');
  });

  it('moves mirrored places together', () => {
    const path = ['fasteners[F1].at[0]', 'fasteners[F2].at[0]'];
    const xs = (model: typeof twoByTwo) => model.fasteners.map(({ at }) => at[0]);
    expect(xs(set({ path, signs: [-1, 1] }, 19))).toEqual([-19, 19, -21, 21]);
    expect(xs(set({ path, signs: [-1, 1], as: 'offset' }, 0.25))).toEqual([-21.25, 21.25, -21, 21]);
  });

  it('scales, without digits that nobody meant', () => {
    expect(set({ path: 'sites.probes.preload', as: 'factor' }, 1.1).sites.probes.preload).toBe(0.044);
    expect(set({ path: 'body.thickness', as: 'offset' }, 0.1).body.thickness).toBe(4.1);
  });

  it('takes a setting for each of its places', () => {
    const moved = set({ path: 'fasteners[*].at[1]', as: 'offset' }, [1, 0, 0, -1]);
    expect(moved.fasteners.map(({ at }) => at[1])).toEqual([19, 18, -18, -19]);
  });

  it('is checked by the schema of the model', () => {
    expect(faultOf(() => set({ path: 'body.thickness' }, -1))).toMatchObject({
      code: 'OUT_OF_RANGE',
      path: 'body.thickness',
    });
    expect(faultOf(() => set({ path: 'body.thicknes' }, 1)).message).toContain('Did you mean "thickness"');
    expect(faultOf(() => set({ path: 'body.thickness' }, 'thick')).code).toBe('SCHEMA');
  });

  it('refuses what does not fit the model', () => {
    expect(faultOf(() => set({ path: 'fasteners[*].at[0]', signs: [1] }, 1)).message).toContain('1 signs for 4 values');
    expect(faultOf(() => set({ path: 'fasteners[*].preload', as: 'factor' }, 1)).message).toContain('no number at');
    const twice = [{ path: 'body.thickness' }, { path: 'body.thickness' }];
    expect(faultOf(() => placeParameters(twoByTwo, twice)).message).toContain('Two parameters are called');
  });
});
