import type { Crossing, SweepRow } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { crossingSettings, crossingWords, passingValue, uncrossedWords } from '../../src/studies/crossing-words.ts';

const thickness = { path: 'body.thickness', label: 'Body thickness', unit: 'mm', scale: 1, value: 4.5 };
const young = { path: 'materials[glass].E', label: 'E of the body', unit: 'GPa', scale: 1e-3, value: 67000 };
const crossing: Crossing = {
  ...{ criterion: 'bow', parameter: 'Body thickness', value: 5.0881, error: 0.021, slope: -0.02, limit: 0.035 },
  passes: 'above',
};
const row = (index: number, settings: number[], bow: number): SweepRow => ({
  ...{ index, settings, outcome: bow > 0.035 ? 'fail' : 'pass' },
  figures: { bow: { value: bow, limit: 0.035, bound: 'most', unit: 'mm', site: 'A1', case: 'mounted' } as never },
});

describe('a value that passes', () => {
  it('counts its error, keeps no more digits than that leaves, and is rounded to its safe side', () => {
    expect(passingValue(5.0881, 0.021, 'above')).toBe(5.11);
    expect(passingValue(5.0881, 0.021, 'below')).toBe(5.06);
    expect(passingValue(5.0881, 0.21, 'above')).toBe(5.3);
    expect(passingValue(5.0881, 0.0003, 'above')).toBe(5.09);
    expect(passingValue(5.0881, null, 'above')).toBe(5.09);
    expect(passingValue(-41.234, null, 'above')).toBe(-41.2);
    expect(passingValue(0.08123, null, 'below')).toBe(0.0812);
  });

  it('is told with where the limit is met, and opens as the head that it names', () => {
    expect(crossingWords(crossing, [thickness])).toBe(
      'Body thickness of 5.11 mm or more passes; the limit is met at 5.09 ±0.02 mm.',
    );
    expect(crossingSettings(crossing, [thickness])).toEqual([5.11]);
    const at = { ...crossing, at: { parameter: 'E of the body', value: 70000 } };
    expect(crossingWords(at, [young, thickness])).toContain('5.11 mm or more passes, at E of the body 70 GPa');
    expect(crossingSettings(at, [young, thickness])).toEqual([70000, 5.11]);
    const stiff = { ...crossing, parameter: young.label, value: 81234, error: 500 };
    expect(crossingSettings(stiff, [young])).toEqual([81800]);
  });
});

describe('a range without a crossing', () => {
  const words = (rows: readonly SweepRow[]) => uncrossedWords(rows, 0.035, [thickness]).replaceAll('\u00a0', ' ');

  it('says on which side of the limit it is, and where it comes nearest', () => {
    expect(words([row(0, [3], 0.09), row(1, [4], 0.05), row(2, [5], 0.0362)])).toBe(
      'All of this range is over the bow limit of 35.0 µm. Nearest to it: 36.2 µm at body thickness 5 mm; look beyond that.',
    );
    expect(words([row(0, [3], 0.09), row(1, [4], 0.0362), row(2, [5], 0.05)])).not.toContain('beyond');
    expect(words([row(0, [6], 0.03), row(1, [7], 0.02)])).toBe(
      'All of this range is within the bow limit of 35.0 µm. Nearest to it: 30.0 µm at body thickness 6 mm.',
    );
    expect(words([{ index: 0, settings: [3] }])).toBe('No value of this range gives an answer.');
  });
});
