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
  it('have the stress area of their thread: pi/4 (d - 0.9382 P)^2 (ISO 898-1), or 0.9743 in inches (ASME B1.1)', () => {
    for (const [size, { diameter, pitch, stressArea }] of Object.entries(screws)) {
      const mean = diameter - (size.startsWith('#') ? 0.9743 : 0.9382) * pitch;
      expect(stressArea / ((Math.PI / 4) * mean ** 2)).toBeCloseTo(1, 2);
    }
  });

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
