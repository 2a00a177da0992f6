import { describe, expect, it } from 'vitest';
import { placesOf, valueAt, withMaterialOf, withValue } from '../../src/studies/model-path.ts';
import { faultOf } from '../model/fault-of.ts';
import { twoByTwo } from '../model/two-by-two.ts';

const read = (path: string): unknown[] => placesOf(twoByTwo, path).map((place) => valueAt(twoByTwo, place));

describe('a path into a head model', () => {
  it.each([
    ['body.thickness', [4]],
    ['sites.skip[1]', [1]],
    ['fasteners[F2].at[0]', [21]],
    ['fasteners[1].at[0]', [21]],
    ['fasteners.1.at.0', [21]],
    ['fasteners[*].at[1]', [18, 18, -18, -18]],
    ['frame.outer.rectangle[0]', [52]],
    ['limits.bow', [0.03]],
  ])('%s reads %j', (path, values) => {
    expect(read(path)).toEqual(values);
  });

  it('may end in a key that the model leaves out', () => {
    const [place] = placesOf(twoByTwo, 'sites.probes.rate');
    expect(valueAt(twoByTwo, place)).toBeUndefined();
    expect(valueAt({ ...twoByTwo, ...(withValue(twoByTwo, place, 0.5) as object) }, place)).toBe(0.5);
  });

  it('sets one value and shares all else', () => {
    const [place] = placesOf(twoByTwo, 'fasteners[F2].at[0]');
    const changed = withValue(twoByTwo, place, 19);
    expect(changed).toEqual({
      ...twoByTwo,
      fasteners: twoByTwo.fasteners.map((one) => (one.name === 'F2' ? { ...one, at: [19, 18] } : one)),
    });
    expect(twoByTwo.fasteners[1].at).toEqual([21, 18]);
  });

  it('reaches into a preset by writing it out', () => {
    const path = 'materials[alumina-96].E';
    const model = withMaterialOf(twoByTwo, path);
    // physics: alumina 96 % has E = 320 GPa.
    expect(placesOf(model, path).map((place) => valueAt(model, place))).toEqual([320_000]);
    expect(withMaterialOf(twoByTwo, 'body.thickness')).toBe(twoByTwo);
  });

  it.each([
    ['fasteners[F5].at[0]', '"F5"', 'Did you mean "F1" or "F2" or "F3"?'],
    ['fasteners[4].at[0]', '"4"', 'items 0 to 3'],
    ['frame.rib[0].width', '"rib"', 'outer, window'],
    ['bodies.thickness', '"bodies"', 'body'],
    ['materials[alumina-69].E', '"alumina-69"', 'Did you mean "alumina-96"'],
    ['body.thickness.mm', '"mm"', 'nothing below it'],
  ])('%s is refused, naming what may have been meant', (path, what, meant) => {
    const fault = faultOf(() => placesOf(withMaterialOf(twoByTwo, path), path));
    expect(fault).toMatchObject({ code: 'SCHEMA', path });
    expect(fault.message).toContain(`no ${what}`);
    expect(fault.message).toContain(meant);
  });

  it.each([
    '',
    '.',
    'body..thickness',
    '.body',
    '[0]',
    'body.',
    'fasteners[0',
    'fasteners]0',
    'body thickness[]',
    '[*',
  ])('"%s" is no path', (path) => {
    expect(faultOf(() => placesOf(twoByTwo, path)).code).toBe('SCHEMA');
  });

  it.each(['__proto__.x', 'body.__proto__', 'constructor.name', 'body.constructor.name'])(
    '%s reaches nothing',
    (path) => {
      expect(faultOf(() => placesOf(twoByTwo, path)).code).toBe('SCHEMA');
    },
  );
});
