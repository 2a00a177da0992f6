import { expect, it } from 'vitest';
import { sectionRows } from '../../src/format/section-rows.ts';

it('tells a section in numbers: the most in each site, then values at round distances', () => {
  const s = Float64Array.from({ length: 61 }, (_, i) => i);
  // Off the head over the first 4 mm, then a parabola that is highest, 90 um, at 34 mm.
  const um = s.map((at) => (at < 4 ? Number.NaN : 90 - 0.1 * (at - 34) ** 2));
  const rows = sectionRows([{ label: 'mounted', s, um }], [{ name: 'A1', from: 10, to: 20 }]);
  expect(rows.columns).toEqual(['Where', 'mounted, µm']);
  expect(rows.rows[0]).toEqual(['most in A1, 10.0 to 20.0 mm', '+70.4']);
  expect(rows.rows[1]).toEqual(['at 0.0 mm', '–']);
  expect(rows.rows.find(([where]) => where === 'at 30.0 mm')).toEqual(['at 30.0 mm', '+88.4']);
  expect(rows.rows.at(-1)?.[0]).toBe('at 60.0 mm');
});
