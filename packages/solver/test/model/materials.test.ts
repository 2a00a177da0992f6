import { describe, expect, it } from 'vitest';
import { findMaterial, materialPresets } from '../../src/model/materials.ts';
import { faultOf } from './fault-of.ts';

describe('findMaterial', () => {
  it('finds presets', () => {
    // EN 10088-1 (published extracts): E of 304 is 200 GPa, expansion 16e-6/K.
    expect(findMaterial({}, 'stainless-304', '')).toMatchObject({ E: 200_000, expansion: 16e-6, basis: 'published' });
    // Recalled from data sheets.
    expect(findMaterial({}, 'alumina-96', '')).toMatchObject({
      E: 320_000,
      nu: 0.22,
      kind: 'ceramic',
      basis: 'memory',
    });
  });

  it("prefers the model's own", () => {
    expect(findMaterial({ materials: { 'alumina-96': { E: 1, nu: 0 } } }, 'alumina-96', '')).toEqual({ E: 1, nu: 0 });
  });

  it.each([
    ['alumina96', /Did you mean "alumina-96"/],
    ['Alumina 96 %', /Did you mean "alumina-96"/],
    ['17-4', /Did you mean "stainless-17-4"/],
    ['kryptonite', /There is no material "kryptonite"\. Known are/],
    ['constructor', /There is no material "constructor"/],
  ])('does not know %s', (name, message) => {
    const fault = faultOf(() => findMaterial({ materials: { mine: { E: 1, nu: 0 } } }, name, 'body.material'));
    expect({ code: fault.code, path: fault.path }).toEqual({ code: 'UNKNOWN_MATERIAL', path: 'body.material' });
    expect(fault.message).toMatch(message);
    expect(fault.details.expected).toEqual(['mine', ...Object.keys(materialPresets)]);
  });

  it('names the source of every preset', () => {
    for (const preset of Object.values(materialPresets)) expect(preset.source).not.toBe('');
  });
});
