import { describe, expect, it } from 'vitest';
import { fieldFacts, numberPaths } from '../../src/format/field-facts.ts';
import { fieldHelp, fieldMeaning } from '../../src/format/field-help.ts';

const placed = (path: string): string => path.replace('materials.*', 'materials.own').replaceAll('*', '3');

describe('help of a field', () => {
  it('says meaning, range and unit', () => {
    expect(fieldHelp('body.thickness', 'mm')).toBe(
      'Thickness of the body; bending stiffness grows with its cube. 0.001 to 1000 mm.',
    );
    expect(fieldHelp('sites.columns', '')).toBe('Sites along x. Whole number, 1 to 64.');
    expect(fieldHelp('limits.bow', '\u00b5m', 1000)).toMatch(/1 to 10000 \u00b5m\.$/);
    expect(fieldHelp('fasteners.12.at.1', 'mm')).toMatch(/^Place of the screw, .* \u2212100000 to 100000 mm\.$/);
  });

  it('knows the range and the meaning of every number that the schema has', () => {
    const paths = numberPaths().filter((path) => path !== 'flathead');
    expect(paths.length).toBeGreaterThan(80);
    expect(paths.filter((path) => fieldFacts(placed(path)) === null)).toEqual([]);
    expect(paths.filter((path) => fieldMeaning(placed(path)) === null)).toEqual([]);
  });

  it('takes a name of the engineer with a point in it for a name', () => {
    expect(fieldMeaning('materials.alumina-99.5 own.E')).toMatch(/^Young/);
  });
});
