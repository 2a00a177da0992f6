import { describe, expect, it } from 'vitest';
import { type PlanColours, planImage } from '../../src/buffers/plan-image.ts';
import { planRaster, rasterDifference, withRim } from '../../src/buffers/plan-raster.ts';
import { planWindow, ringPath } from '../../src/buffers/plan-window.ts';
import { BEYOND, HATCH, RAMP, SIGNED_RAMP, TO_LIMIT } from '../../src/buffers/ramp.ts';
import { gridMesh, nodal } from './grid-mesh.ts';

const mesh = gridMesh(9, 7, 60, 40);
const window = { left: -35, top: 25, width: 70, height: 50 };
const [columns, rows] = [140, 100];
const colours: PlanColours = {
  kind: 'magnitude',
  limit: 10,
  top: 20,
  isoStep: 1e9,
  base: '#808080',
  everywhere: true,
  pixelRatio: 1,
};
const place = (at: number): [number, number] => [
  window.left + ((at % columns) + 0.5) * (window.width / columns),
  window.top - (Math.floor(at / columns) + 0.5) * (window.height / rows),
];
const hexAt = (image: Uint8ClampedArray, at: number): string =>
  `#${[...image.slice(4 * at, 4 * at + 3)].map((v) => v.toString(16).padStart(2, '0')).join('')}`;
/** Largest difference of a channel from a colour. */
const off = (image: Uint8ClampedArray, at: number, hex: string): number =>
  Math.max(...[0, 1, 2].map((k) => Math.abs(image[4 * at + k] - Number.parseInt(hex.slice(1 + 2 * k, 3 + 2 * k), 16))));
const pixel = (x: number, y: number): number =>
  Math.floor((window.top - y) * (rows / window.height)) * columns +
  Math.floor((x - window.left) * (columns / window.width));

describe('raster of a field in plan', () => {
  const plane = (x: number, y: number): number => 3 + 0.2 * x - 0.5 * y;
  const raster = planRaster(mesh, nodal(mesh, plane), window, columns, rows);

  it('reads a linear field exactly at the middle of every pixel of the plate, and nothing beside it', () => {
    let covered = 0;
    raster.values.forEach((value, at) => {
      const [x, y] = place(at);
      const inside = Math.abs(x) < 30 && Math.abs(y) < 20;
      expect(Number.isNaN(value)).toBe(!inside);
      if (!inside) return;
      covered++;
      expect(value).toBeCloseTo(plane(x, y), 5);
    });
    expect(covered).toBe(120 * 80);
  });

  it('gives the difference of two heads on different meshes, and carries the field one pixel beyond the rim', () => {
    const other = gridMesh(14, 4, 60, 40);
    const difference = rasterDifference(
      raster,
      planRaster(
        other,
        nodal(other, (x, y) => plane(x, y) - 1.5),
        window,
        columns,
        rows,
      ),
    );
    expect(difference.values[pixel(4, 7)]).toBeCloseTo(1.5, 5);
    const wider = withRim(raster);
    const at = pixel(30.2, 3);
    expect(raster.values[at]).toBeNaN();
    expect(wider.values[at]).toBe(raster.values[at - 1]);
    expect(wider.values[at + 1]).toBeNaN();
  });
});

describe('picture of a field in plan', () => {
  const slope = planRaster(
    mesh,
    nodal(mesh, (x) => (x / 30) * 20),
    window,
    columns,
    rows,
  );

  it('has the colours of the stage: magnitude from zero to the limit, hatch beyond, clear off the plate', () => {
    const image = planImage(slope, window, [], colours);
    // Half a pixel is 0.17 of the limit of 10, which is a tenth of a stop.
    expect(off(image, pixel(0.2, 0), RAMP[0])).toBeLessThan(6);
    for (const x of [14.8, -14.8]) expect(off(image, pixel(x, 0), TO_LIMIT[6])).toBeLessThan(6);
    expect(off(image, pixel(7.4, 0), TO_LIMIT[3])).toBeLessThan(9);
    // Beyond: strokes over colours that go on to the top, also where the field bends to the other side.
    const row = (x: number) => Array.from({ length: 8 }, (_, i) => pixel(x, 0) + i);
    for (const [x, stop] of [
      [-29.9, 8],
      [20.5, 4],
    ]) {
      const strokes = row(x).filter((at) => hexAt(image, at) === HATCH);
      expect(strokes.length).toBeGreaterThanOrEqual(2);
      expect(strokes.length).toBeLessThanOrEqual(3);
      expect(Math.min(...row(x).map((at) => off(image, at, BEYOND[stop])))).toBeLessThan(12);
    }
    expect(image[4 * pixel(32, 0) + 3]).toBe(0);
  });

  it('lays the field half on the base and without hatch beside the sites', () => {
    const site = { name: 'A1', row: 0, column: 0, centre: [20, 5], field: [8, 8] } as const;
    const image = planImage(slope, window, [site], { ...colours, everywhere: false });
    const zone = (y: number) => new Set(Array.from({ length: 12 }, (_, i) => hexAt(image, pixel(17, y) + i)));
    expect(zone(5)).toContain(HATCH);
    expect(zone(-5)).not.toContain(HATCH);
    // At 17.2 the field is 11.5, 0.15 of the way from the limit to the top: about BEYOND[1], c23713, 0.45 of it on 808080.
    expect(off(image, pixel(17, -5), '#9e5f4f')).toBeLessThan(6);
    expect(off(image, pixel(0.2, 5), '#b4b2ad')).toBeLessThan(4);
  });

  it('draws an iso-line at each round step and none on a level field', () => {
    const dark = (field: typeof slope, step: number): number[] => {
      const plain = planImage(field, window, [], { ...colours, limit: 40, top: 50 });
      const lined = planImage(field, window, [], { ...colours, limit: 40, top: 50, isoStep: step });
      return Array.from({ length: columns }, (_, i) => i).filter((i) => {
        const at = pixel(window.left + 0.1, 0) + i;
        return hexAt(lined, at) !== hexAt(plain, at);
      });
    };
    // Zero is level with every step: lines at -20 .. 20 by 10, a pixel or two wide each.
    const lines = dark(slope, 10).map((i) => Math.round((place(i)[0] / 30) * 2) * 10);
    expect([...new Set(lines)]).toEqual([-20, -10, 0, 10, 20]);
    expect(lines.length).toBeLessThanOrEqual(15);
    const level = planRaster(mesh, new Float64Array(mesh.x.length), window, columns, rows);
    expect(dark(level, 10)).toEqual([]);
  });

  it('shows a difference by its sign', () => {
    const image = planImage(slope, window, [], { ...colours, kind: 'signed', limit: null, top: 20 });
    expect(off(image, pixel(-29.9, 0), SIGNED_RAMP[0])).toBeLessThan(4);
    expect(off(image, pixel(0.2, 0), SIGNED_RAMP[10])).toBeLessThan(6);
    expect(off(image, pixel(29.9, 0), SIGNED_RAMP[20])).toBeLessThan(4);
  });
});

describe('window of the plan', () => {
  it('holds every ring with the margin, and turns y over in paths', () => {
    const rings = [
      [
        [-3, -1],
        [5, -1],
        [5, 4],
      ],
    ] as const;
    expect(planWindow(rings, 2)).toEqual({ left: -5, top: 6, width: 12, height: 9 });
    expect(ringPath(rings)).toBe('M-3.000 1.000L5.000 1.000L5.000 -4.000Z');
  });
});
