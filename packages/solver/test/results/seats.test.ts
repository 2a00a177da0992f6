import { describe, expect, it } from 'vitest';
import { checkHeadModel } from '../../src/model/read.ts';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { solveHead } from '../../src/solve-head.ts';
import { solvePlate } from '../../src/solve-plate.ts';
import { faultOf } from '../model/fault-of.ts';
import { altered, twoByTwo } from '../model/two-by-two.ts';

/**
 * A block of L x b, next to rigid, pressed by P at an eccentricity e onto a bed of the modulus k that can't pull, in n
 * strips across, each in two cells side by side.
 */
function pressed(e: number, n: number) {
  const [L, b, P] = [60, 10, 100];
  const step = L / n;
  const centres = Array.from({ length: n }, (_, i) => -L / 2 + (i + 0.5) * step);
  const problem: PlateProblem = {
    plate: 1,
    outline: { rectangle: [L, b] },
    section: { E: 1e9, nu: 0.3, thickness: 20 },
    supports: centres.flatMap((x) =>
      [-b / 4, b / 4].map((y) => ({
        at: [x, y] as [number, number],
        over: { rectangle: [step, b / 2] as [number, number], centre: [x, y] as [number, number] },
        stiffness: (50 * step * b) / 2,
        acts: 'push' as const,
      })),
    ),
    loads: [{ over: { rectangle: [2, b], centre: [e, 0] }, force: -P }],
    theory: 'shear',
    mesh: { size: 3 },
  };
  const { reactions } = solvePlate(problem);
  const strips = centres.map((_, i) => reactions[2 * i] + reactions[2 * i + 1]);
  return {
    force: strips.reduce((sum, force) => sum + force, 0),
    moment: strips.reduce((sum, force, i) => sum + force * centres[i], 0),
    length: strips.filter((force) => force > 0).length * step,
    pressure: Math.max(...strips) / (step * b),
    // Ideal: contact over 3 (L/2 - e) under a triangle of pressure, or all over where e < L/6.
    ideal: { length: Math.min(L, 3 * (L / 2 - e)), pressure: (2 * P) / (3 * b * (L / 2 - e)) },
    P,
  };
}

describe('a rigid block on a bed that can not pull', () => {
  it.each([12, 18, 24])(
    'bears over three times the distance from load to edge beyond the middle third (e = %d mm), by statics',
    (e) => {
      const n = 60;
      const { force, moment, length, pressure, ideal, P } = pressed(e, n);
      expect(force).toBeCloseTo(P, 6);
      expect(moment).toBeCloseTo(P * e, 4);
      expect(Math.abs(length - ideal.length)).toBeLessThanOrEqual(60 / n);
      // The mean over the outermost strip lies half a strip below the peak.
      const mean = ideal.pressure * (1 - 60 / n / 2 / ideal.length);
      expect(pressure / mean).toBeCloseTo(1, 2);
    },
  );

  it('bears all over within the middle third', () => {
    const { length, pressure, P } = pressed(8, 30);
    expect(length).toBe(60);
    // P/A (1 + 6 e/L), half a strip of 2 mm inside the edge.
    expect(pressure / ((P / 600) * (1 + (12 * 8 * 29) / 60 ** 2))).toBeCloseTo(1, 3);
  });
});

describe('a support over an area', () => {
  const plate = (support: object): PlateProblem => ({
    plate: 1,
    outline: { rectangle: [60, 40] },
    section: { E: 2e5, nu: 0.3, thickness: 1 },
    edges: [{ along: 'all', held: 'simple' }],
    supports: [{ at: [5, 3], stiffness: 2e4, ...support }],
    loads: [{ over: 'all', pressure: 0.01 }],
    theory: 'shear',
    mesh: { size: 2 },
  });
  const reaction = (support: object) => solvePlate(plate(support)).reactions[0];

  it('holds the average of w, as a bearing disc of the same area does, and not the middle', () => {
    const disc = reaction({ diameter: 16 });
    expect(reaction({ over: { circle: 16, centre: [5, 3] } }) / disc).toBeCloseTo(1, 3);
    expect(Math.abs(reaction({}) / disc - 1)).toBeGreaterThan(0.01);
  });

  it('is refused off the plate, and beside a diameter', () => {
    const off = faultOf(() => solvePlate(plate({ over: { circle: 4, centre: [50, 0] } })));
    expect({ code: off.code, path: off.path }).toEqual({ code: 'OUTSIDE', path: 'supports.0.over' });
    const both = faultOf(() => solvePlate(plate({ over: { circle: 4 }, diameter: 4 })));
    expect({ code: both.code, path: both.path }).toEqual({ code: 'SCHEMA', path: 'supports.0.diameter' });
  });
});

describe('a head on seats', () => {
  // Fasteners between the seats and the sites: the preload lifts the middle and pries the rim onto the seats.
  const inner = [
    [-17, 16],
    [17, 16],
    [-17, -16],
    [17, -16],
  ];
  const pads = [
    { name: 'NW', at: [-22, 19], diameter: 5, modulus: 2e4 },
    { name: 'NE', at: [22, 19], diameter: 5, modulus: 2e4 },
    { name: 'SW', at: [-22, -19], diameter: 5, modulus: 2e4 },
    { name: 'SE', at: [22, -19], diameter: 5, modulus: 2e4 },
  ];
  const head = (seats: object[] | undefined) =>
    checkHeadModel(
      altered(twoByTwo, {
        seats,
        fasteners: twoByTwo.fasteners.map((each, i) => ({ ...each, at: inner[i] })),
        cases: [{ name: 'mounted' }, { name: 'all touched', touched: 'all' }],
      }),
    );
  const solved = (seats: object[] | undefined) => solveHead(head(seats), { quality: 'live' }).result.cases;

  it('pries its rim onto them: loads, fasteners and contacts balance, and the screws carry the contacts too', () => {
    const [mounted] = solved(pads);
    const contact = mounted.seats.reduce((sum, { force }) => sum + force, 0);
    const pull = mounted.fasteners.reduce((sum, { reaction }) => sum + reaction, 0);
    expect(contact).toBeGreaterThan(0.05 * mounted.load);
    expect(mounted.load + pull + contact).toBeCloseTo(0, 8);
    expect(mounted.reaction).toBeCloseTo(pull + contact, 9);
    const [free] = solved(undefined);
    expect(free.seats).toEqual([]);
    expect(Math.abs(mounted.bow.value)).toBeLessThan(Math.abs(free.bow.value));
    // Double symmetry: the four share alike, up to the mesh.
    for (const { force } of mounted.seats) expect(force / (contact / 4)).toBeCloseTo(1, 1);
  });

  it('says of each cell whether it bears or has lifted off: force in its sense or a gap, never both', () => {
    const inside = [...pads.slice(1), { name: 'middle', at: [0, 0], diameter: 2.5, modulus: 2e4 }];
    const [{ seats }] = solved(inside);
    let [bearing, lifted] = [0, 0];
    for (const { cells, force, lifted: share, liftedAround, pressure } of seats) {
      for (const cell of cells) {
        if (cell.bears) {
          bearing++;
          expect(cell.force).toBeGreaterThanOrEqual(0);
          // As far down as its force presses: modulus 2e4 N/mm3.
          expect(cell.w).toBeCloseTo(-cell.force / (2e4 * cell.area), 12);
        } else {
          lifted++;
          expect(cell.force).toBe(0);
          expect(cell.w).toBeGreaterThanOrEqual(0);
        }
      }
      const area = cells.reduce((sum, cell) => sum + cell.area, 0);
      const off = cells.filter(({ bears }) => !bears);
      expect(share).toBeCloseTo(off.reduce((sum, cell) => sum + cell.area, 0) / area, 12);
      expect(liftedAround === null).toBe(off.length === 0);
      expect(force).toBeCloseTo(
        cells.reduce((sum, cell) => sum + cell.force, 0),
        12,
      );
      expect(pressure).toBeCloseTo(Math.max(...cells.map((cell) => cell.force / cell.area)), 12);
    }
    expect(Math.min(bearing, lifted)).toBeGreaterThan(5);
    const middle = seats[3];
    expect(middle).toMatchObject({ name: 'middle', force: 0, lifted: 1 });
    expect(Math.hypot(...middle.liftedAround!)).toBeLessThan(1e-6);
  });

  it('carries nothing where nothing loads it', () => {
    const [, touched] = solved(pads);
    for (const seat of touched.seats) expect(seat).toMatchObject({ force: 0, lifted: 0, liftedAround: null });
  });
});
