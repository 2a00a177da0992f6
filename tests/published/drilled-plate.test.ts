import { type PlateProblem, solvePlate } from '@flathead/solver';
import { describe, expect, it } from 'vitest';

type Place = [number, number];

/** Pitch 1 mm throughout. */
const [E, cell] = [100_000, Math.SQRT2];

/** 8 x 8 holes with their rows along the sides. */
const alongRows: Place[] = Array.from({ length: 64 }, (_, k) => [(k % 8) - 3.5, Math.floor(k / 8) - 3.5]);
/** 72 holes, their rows at 45 degrees to the sides of a square of 6 cells of sqrt 2. */
const acrossRows: Place[] = Array.from({ length: 72 }, (_, k) => {
  const offset = k % 2 === 0 ? 0.25 : 0.75;
  return [((Math.floor(k / 2) % 6) - 3 + offset) * cell, (Math.floor(k / 12) - 3 + offset) * cell];
});

interface Drilled {
  readonly mu: number;
  readonly nu: number;
  readonly thickness: number;
  readonly theory: 'thin' | 'shear';
}

/** w at the places reported, each hole meshed, over that of the effective plate. */
function ratios(
  plate: Omit<PlateProblem, 'plate' | 'section'>,
  centres: readonly Place[],
  { mu, nu, thickness, theory }: Drilled,
  angle: number,
  field: number | null,
): number[] {
  const [diameter, section] = [1 - mu, { E, nu, thickness }];
  const drilled = { ...section, holes: { pitch: 1, diameter, pattern: 'square' as const, angle } };
  const explicit = solvePlate({
    plate: 1,
    ...plate,
    theory,
    section,
    openings: centres.map((centre) => ({ circle: diameter, centre })),
    mesh: { size: 0.1 },
  });
  const effective = solvePlate({
    plate: 1,
    ...plate,
    theory,
    mesh: { size: 0.25 },
    ...(field === null
      ? { section: drilled }
      : { section, regions: [{ shape: { rectangle: [field, field] }, section: drilled }] }),
  });
  return explicit.w.at.map((w, i) => w / effective.w.at[i]);
}

/** Two sides rest, two line loads between rows of holes bend the plate: middle of the plate. */
function strip(drilled: Drilled, degrees: 0 | 45): number {
  const [half, at] = degrees === 0 ? [4, 2] : [3 * cell, 2 * cell];
  const line = (x: number) => ({ from: [x, -half] as Place, to: [x, half] as Place });
  const [middle] = ratios(
    {
      outline: { rectangle: [2 * half, 2 * half] },
      edges: [-half, half].map((x) => ({ along: line(x), held: 'simple' as const })),
      loads: [-at, at].map((x) => ({ along: line(x), force: 100 })),
      report: { at: [[0, 0]] },
    },
    degrees === 0 ? alongRows : acrossRows,
    drilled,
    degrees,
    null,
  );
  return middle;
}

/** A square of 14 mm with a drilled field of 8 in its middle, pushed there and held by discs near its corners, as a head is. */
function headlike(drilled: Drilled): number[] {
  const supports = [
    [-6, -6],
    [6, -6],
    [6, 6],
    [-6, 6],
  ].map(([x, y]) => ({ at: [x, y] as Place, diameter: 1 }));
  return ratios(
    {
      outline: { rectangle: [14, 14] },
      supports,
      loads: [{ over: { rectangle: [8, 8] }, force: 100 }],
      report: {
        at: [
          [0, 0],
          [4, 0],
          [4, 4],
        ],
      },
    },
    alongRows,
    drilled,
    0,
    8,
  );
}

/**
 * Drilled plates two pitches thick and more bend with shear: the material between the holes turns without being bound to the slope
 * of the plate, as in a stack of membranes. Reference: the same program with every hole an opening; what is checked is
 * the effective section, not the solver.
 */
describe('a plate of 8 x 8 holes, each of them meshed, against the effective plate', () => {
  it.each([0.4, 0.5])('ligament %d: bent along the rows and at 45 degrees, within 5 percent', (mu) => {
    for (const thickness of [2, 4])
      for (const degrees of [0, 45] as const) {
        const ratio = strip({ mu, nu: 0.3, thickness, theory: 'shear' }, degrees);
        console.info(`bent at ${degrees} degrees, ligament ${mu}, ${thickness} pitches thick: ${ratio.toFixed(3)}`);
        expect(Math.abs(ratio - 1)).toBeLessThan(0.05);
      }
  });

  it.each([0.3, 0.4, 0.5])('ligament %d: as a field of a head, within 2 percent', (mu) => {
    const all = headlike({ mu, nu: 0.25, thickness: 3, theory: 'shear' });
    console.info(`field of a head, ligament ${mu}: ${all.map((ratio) => ratio.toFixed(3)).join(', ')}`);
    for (const ratio of all) expect(Math.abs(ratio - 1)).toBeLessThan(0.02);
  });

  it('a quarter pitch thick is stiffer than its effective plate, most at 45 degrees: not what the constants are for', () => {
    const thin = { mu: 0.4, nu: 0.3, thickness: 0.25, theory: 'thin' } as const;
    const [along, across] = [strip(thin, 0), strip(thin, 45)];
    console.info(`thin plate theory: ${along.toFixed(3)} along the rows, ${across.toFixed(3)} at 45 degrees`);
    expect(along).toBeLessThan(0.96);
    expect(across).toBeLessThan(0.85);
    expect(across).toBeGreaterThan(0.6);
  });
});
