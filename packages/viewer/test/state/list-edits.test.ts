import { checkHeadModel, solveHead } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import {
  asKind,
  newFreeRib,
  newKeepOut,
  usersOf,
  withItem,
  withMaterialNamed,
  withOwnMaterial,
  withoutItem,
  withoutMaterial,
} from '../../src/state/list-edits.ts';
import { withFrame } from '../../src/state/recipe-edits.ts';
import { asKey, valueAt, withValue } from '../../src/state/set-value.ts';
import { sampleHead } from './sample-head.ts';

describe('lists of the recipe', () => {
  it('takes a keep-out and an opening in and leaves nothing behind when they go', () => {
    const kept = withItem(sampleHead, 'keepOuts', newKeepOut(sampleHead));
    expect(withItem(kept, 'keepOuts', newKeepOut(kept)).keepOuts?.map(({ name }) => name)).toEqual([
      'keep-out 1',
      'keep-out 2',
    ]);
    expect(withoutItem(kept, 'keepOuts', 0)).toEqual(sampleHead);
    const open = withItem(sampleHead, 'body.openings', { circle: 3 });
    expect(withoutItem(open, 'body.openings', 0)).toEqual(sampleHead);
  });

  it('starts a single rib where it can be solved', () => {
    const framed = withFrame(sampleHead, true);
    const ribbed = withItem(framed, 'frame.ribs', newFreeRib(framed));
    const bow = (model: typeof framed) => Math.abs(solveHead(model, { quality: 'live' }).result.cases[0].bow.value);
    expect(bow(ribbed)).toBeLessThan(bow(framed));
  });

  it('gives a shape of another kind the same place and size', () => {
    const rectangle = { rectangle: [8, 4] satisfies [number, number], centre: [3, 1] satisfies [number, number] };
    expect(asKind(rectangle, 'circle')).toEqual({ circle: 8, centre: [3, 1] });
    const polygon = asKind(rectangle, 'polygon');
    expect(polygon).toEqual({
      polygon: [
        [-1, -1],
        [7, -1],
        [7, 3],
        [-1, 3],
      ],
    });
    expect(asKind(polygon, 'rectangle')).toEqual(rectangle);
  });
});

describe('own materials', () => {
  it('starts with the values of the body and can be renamed wherever it is used', () => {
    const own = withOwnMaterial(sampleHead);
    expect(own.materials).toMatchObject({ 'material 1': { E: 320_000, nu: 0.22 } });
    const used = checkHeadModel({ ...own, body: { ...own.body, material: 'material 1' } });
    const renamed = withMaterialNamed(used, 'material 1', 'blank 99.5');
    expect(renamed.body.material).toBe('blank 99.5');
    expect(usersOf(renamed, 'blank 99.5')).toEqual(['body']);
    expect(withMaterialNamed(used, 'material 1', ' ')).toBe(used);
    expect(withoutMaterial(own, 'material 1')).toEqual(sampleHead);
    // A point in the name is no step of the path.
    const path = `materials.${asKey('blank 99.5')}.E`;
    expect(valueAt(renamed, path)).toBe(320_000);
    expect(valueAt(withValue(renamed, path, 1e5), path)).toBe(1e5);
  });
});
