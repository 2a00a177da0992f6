import { describe, expect, it } from 'vitest';
import { fastenerStiffness } from '../../src/model/fastener-stiffness.ts';
import { findScrew, screws } from '../../src/model/screws.ts';
import { faultOf } from './fault-of.ts';

const steel = { E: 200_000, nu: 0.3 };
const ceramic = { E: 320_000, nu: 0.22 };
const m4 = { name: 'F1', at: [0, 0] as [number, number], screw: 'M4' };
const auto = (bearing: number, stack: Parameters<typeof fastenerStiffness>[2]) =>
  fastenerStiffness(m4, bearing, stack, 'fasteners.0');

describe('fastenerStiffness', () => {
  const bearing = screws.M4.bearing;

  it('follows VDI 2230 (from memory) for an M4 through 20 mm of steel, worked by hand', () => {
    // d3 = 4 - 1.22687 * 0.7 = 3.14119, A3 = 7.7497, A_N = 12.5664:
    // 0.73 * 4 / (2e5 A_N) + (20 + 2) / (2e5 A3) = 1.5356e-5 mm/N.
    // dw 6.53, dh 4.5, beta 3.0628, tan 0.57458, base 29.513: 2 ln(3.99579) / (2 * 2e5 * pi * 4.5 * 0.57458) = 8.5267e-7.
    const { terms } = auto(bearing, [{ thickness: 20, material: steel }]);
    expect(terms!.screw).toBeCloseTo(65_121, -1);
    expect(terms!.clamped / 1_172_790).toBeCloseTo(1, 4);
    // 1.3 * 2 * 3.265 * 2e5 / 0.91
    expect(terms!.seat).toBeCloseTo(1_865_714, -1);
    expect(terms!.clampedLength).toBe(20);
  });

  /*
   * Two screws through a 17-4PH frame (E 200000, nu 0.27) into a steel stiffener, every term worked by hand from the
   * formulas of VDI 2230 (memory), in mm/N.
   *
   * M2.5, 4 mm of frame, 4 mm engaged in steel 420 (E 215000):
   *   d3 = 2.5 - 1.22687 * 0.45 = 1.94791, A3 = pi/4 d3^2 = 2.98007, A_N = pi/4 * 2.5^2 = 4.90874
   *   head     0.4 * 2.5 / (2e5 * 4.90874)                                       = 1.01859e-6
   *   free     4 / (2e5 * 2.98007)                                               = 6.71124e-6
   *   engaged  0.5 * 2.5 / (2e5 * 2.98007) = 2.09726e-6 } times coth(4 / 1.71591) = 1.019071: 2.13726e-6
   *   tapped   0.33 * 2.5 / (215000 * 4.90874) = 7.81710e-7 }                               7.96617e-7
   *            with 1.71591 = E A3 * sum = 596015 * 2.87897e-6 mm
   *   cone     dw 4.18, dh 2.9, tan = 0.348 + 0.013 ln(4 / 4.18) + 0.193 ln 3 = 0.559460, base = 4.18 + 8 tan = 8.65568
   *            2 ln[(7.08 * 5.75568) / (1.28 * 11.55568) = 2.75502] / (2 * 2e5 * pi * 2.9 * tan) = 9.94132e-7
   *   seat     (1 - 0.0729) / (1.3 * 4.18 * 2e5)                                 = 8.53055e-7
   *   1 / (1 / (1 / 1.066371e-5 + 1 / 9.94132e-7) + 8.53055e-7)                  = 567404 N/mm
   * M4, 5 mm of frame, long in tool steel (E 207000):
   *   d3 = 3.14119, A3 = 7.74959, A_N = 12.56637
   *   head 1.6 / (2e5 A_N), free 5 / (2e5 A3), engaged 2 / (2e5 A3), tapped 1.32 / (207000 A_N)
   *   cone     dw 6.53, dh 4.5, tan = 0.348 + 0.013 ln(5 / 6.53) + 0.193 ln 3 = 0.556562, base = 6.53 + 10 tan = 12.09562
   *            2 ln[(11.03 * 7.59562) / (2.03 * 16.59562) = 2.48685] / (2 * 2e5 * pi * 4.5 * tan) = 5.78922e-7
   *   seat     0.9271 / (1.3 * 6.53 * 2e5)                                       = 5.46060e-7
   */
  const hand = [
    {
      screw: 'M2.5',
      thickness: 4,
      engagement: 4,
      tappedE: 215_000,
      terms: [1.01859e-6, 6.71124e-6, 2.13726e-6, 7.96617e-7, 9.94132e-7, 8.53055e-7],
      stiffness: 567_404,
    },
    {
      screw: 'M4',
      thickness: 5,
      engagement: undefined,
      tappedE: 207_000,
      terms: [6.3662e-7, 3.22598e-6, 1.29039e-6, 5.07451e-7, 5.78922e-7, 5.4606e-7],
      stiffness: 933_475,
    },
  ];
  it.each(hand)('has every term of an $screw through a frame into a steel stiffener as worked by hand', (given) => {
    const { screw, thickness, engagement, tappedE } = given;
    const { terms, stiffness } = fastenerStiffness(
      { name: 'F1', at: [0, 0], screw, engagement },
      screws[screw].bearing,
      [{ thickness, material: { E: 200_000, nu: 0.27 } }],
      'fasteners.0',
      { E: tappedE, strength: null },
    );
    const { head, free, engaged, tapped, clamped, seat } = terms!.compliance;
    [head, free, engaged, tapped, clamped, seat].forEach((term, i) => {
      expect(term / given.terms[i], `term ${i}`).toBeCloseTo(1, 5);
    });
    expect(stiffness! / given.stiffness).toBeCloseTo(1, 5);
    expect(1 / terms!.screw).toBeCloseTo(head + free + engaged + tapped, 15);
  });

  it('has a short engagement give way as a bar on the springs of its flanks, solved as a chain of slices', () => {
    // Core E A3 in n slices, each on a spring of the flanks. A long chain has the compliance 1 / sqrt(E A3 c) at its
    // loaded end: with c from the long terms, the compliance of a chain as long as the engagement follows.
    const given = { name: 'F1', at: [0, 0] as [number, number], screw: 'M2.5' };
    const stack = [{ thickness: 4, material: steel }];
    const ends = (engagement?: number) => {
      const { terms } = fastenerStiffness({ ...given, engagement }, screws['M2.5'].bearing, stack, '');
      return terms!.compliance.engaged + terms!.compliance.tapped;
    };
    const core = 2e5 * 2.980074;
    const flanks = 1 / (core * ends() ** 2);
    for (const engagement of [0.6, 1.25, 2.5, 5]) {
      const slices = 20_000;
      const dx = engagement / slices;
      // From the free end: the part beyond, plus the flank of this slice, through the core of this slice.
      let stiffness = 0;
      for (let i = 0; i < slices; i++) stiffness = 1 / (1 / (stiffness + flanks * dx) + dx / core);
      expect(ends(engagement) * stiffness, `${engagement} mm`).toBeCloseTo(1, 3);
    }
    expect(ends(30) / ends()).toBeCloseTo(1, 9);
  });

  it('puts screw and clamped parts side by side, and the seat in series', () => {
    const { stiffness, terms } = auto(bearing, [{ thickness: 8, material: ceramic }]);
    expect(1 / stiffness!).toBeCloseTo(1 / (terms!.screw + terms!.clamped) + 1 / terms!.seat, 15);
  });

  it('lies between a sleeve under the head and the cone at its widest', () => {
    const length = 8;
    const { terms } = auto(bearing, [{ thickness: length, material: ceramic }]);
    const sleeve = (outer: number) => (ceramic.E * Math.PI * (outer ** 2 - 4.5 ** 2)) / 4 / length;
    expect(terms!.clamped).toBeGreaterThan(sleeve(bearing));
    expect(terms!.clamped).toBeLessThan(sleeve(bearing + 2 * length));
  });

  it('takes layers in series, and seats on the outermost', () => {
    const one = auto(bearing, [{ thickness: 8, material: steel }]);
    const two = auto(bearing, [
      { thickness: 3, material: steel },
      { thickness: 5, material: steel },
    ]);
    expect(two.stiffness).toBeCloseTo(one.stiffness!, 3);
    const [outside, inside] = [
      [steel, ceramic],
      [ceramic, steel],
    ].map(
      (pair) =>
        auto(
          bearing,
          pair.map((material) => ({ thickness: 4, material })),
        ).terms!,
    );
    expect(outside.clamped).toBeCloseTo(inside.clamped, 3);
    expect(outside.seat / inside.seat).toBeCloseTo((1.6 * 0.91) / (1 - 0.22 ** 2), 9);
  });

  it('is what the model says where it says so', () => {
    expect(fastenerStiffness({ ...m4, stiffness: 45_000 }, bearing, [], '')).toEqual({
      stiffness: 45_000,
      terms: null,
    });
    expect(fastenerStiffness({ ...m4, stiffness: 'rigid' }, bearing, [], '')).toEqual({ stiffness: null, terms: null });
  });

  it('asks for a screw or a stiffness', () => {
    const fault = faultOf(() => fastenerStiffness({ name: 'F1', at: [0, 0] }, 5, [], 'fasteners.3'));
    expect({ code: fault.code, path: fault.path }).toEqual({ code: 'SCHEMA', path: 'fasteners.3.screw' });
    expect(fault.message).toMatch(/Give "screw", such as "M2.5", or "stiffness"/);
  });

  it('refuses a bearing that falls through the hole', () => {
    const fault = faultOf(() => auto(4.5, [{ thickness: 8, material: steel }]));
    expect({ code: fault.code, path: fault.path }).toEqual({ code: 'OUT_OF_RANGE', path: 'fasteners.0.bearing' });
  });
});

describe('screws', () => {
  it('bear outside their hole and inside their head', () => {
    for (const { diameter, hole, bearing, head } of Object.values(screws)) {
      expect([diameter, hole, bearing, head]).toEqual([diameter, hole, bearing, head].sort((a, b) => a - b));
    }
  });

  it('are known by size', () => {
    expect(findScrew('M2.5', '').stressArea).toBe(3.39);
    const fault = faultOf(() => findScrew('M2,5', 'fasteners.0.screw'));
    expect({ code: fault.code, path: fault.path }).toEqual({ code: 'UNKNOWN_SCREW', path: 'fasteners.0.screw' });
    expect(fault.message).toMatch(/Did you mean "M2.5".*#10-32/);
  });
});
