import { describe, expect, it } from 'vitest';
import type { Probes } from '../../src/model/head-model.ts';
import { areaMean } from '../../src/results/area-mean.ts';
import { type ContactField, siteContact, siteForce } from '../../src/results/contact.ts';
import { irregularMesh } from '../assembly/sample-meshes.ts';

const probes: Probes = { count: 200, field: [10, 10], preload: 0.08, touchdown: 0.2, rate: 0.5, kind: 'shouldered' };
const floating: Probes = { ...probes, kind: 'floating' };
/** 10 x 10 mm. */
const mesh = irregularMesh(5);
const plane = { a: 0.004, bx: 2e-4, by: -1e-4 };

/** A deflection of degree two, which the elements hold exactly: w, thetaX = w,y, thetaY = -w,x. */
function fieldOf(
  w: (x: number, y: number) => number,
  wx: (x: number) => number,
  wy: (y: number) => number,
): ContactField {
  const u = new Float64Array(3 * mesh.x.length);
  mesh.x.forEach((x, i) => {
    u.set([w(x, mesh.y[i]), wy(mesh.y[i]), -wx(x)], 3 * i);
  });
  return { mesh, u, triangles: Uint32Array.from(mesh.region.keys()), fastenerPlane: plane };
}

/** Highest, 0.06 mm, at (4.3, 5.9), inside a triangle; falls by c r^2. */
const [x0, y0, c] = [4.3, 5.9, 4e-4];
const dome = fieldOf(
  (x, y) => 0.06 - c * ((x - x0) ** 2 + (y - y0) ** 2),
  (x) => -2 * c * (x - x0),
  (y) => -2 * c * (y - y0),
);
const farthest2 = x0 ** 2 + 0 + y0 ** 2;
const lowest = 0.06 - c * Math.max(farthest2, (10 - x0) ** 2 + y0 ** 2);
/** Mean of (x - x0)^2 over 0..10 is 100/12 + (5 - x0)^2. */
const meanDome = 0.06 - c * (200 / 12 + (5 - x0) ** 2 + (5 - y0) ** 2);

describe('contact force left to the probes of a site', () => {
  it('at the board is preload - rate w, least where w is largest though no node is there', () => {
    const { board, device } = siteContact(floating, false, dome)!;
    expect(board!.minimum).toBeCloseTo(0.08 - 0.5 * 0.06, 12);
    expect(board!.mean).toBeCloseTo(0.08 - 0.5 * meanDome, 12);
    expect(board!.spread).toBeCloseTo(0.5 * (0.06 - lowest), 12);
    expect(board!.compression).toBeCloseTo(0.08 / 0.5 - 0.06, 12);
    expect(device).toBeNull();
  });

  it('of touched floating probes is the touchdown force at both ends, however the head bows', () => {
    const even = { minimum: 0.2, mean: 0.2, spread: 0, compression: 0.4 };
    expect(siteContact(floating, true, dome)).toEqual({ board: even, device: even });
    const { touchdown: _, ...unknown } = floating;
    expect(siteContact(unknown, true, dome)).toEqual({ board: null, device: null });
  });

  it('of touched shouldered probes grows at the device end with the deviation from the fastener plane', () => {
    const { board, device } = siteContact(probes, true, dome)!;
    expect(board).toEqual(siteContact(floating, false, dome)!.board);
    // The dome less a plane: its summit moves by -plane slope / (2 c), and rises by slope^2 / (4 c).
    const deviation = (x: number, y: number): number =>
      0.06 - c * ((x - x0) ** 2 + (y - y0) ** 2) - plane.a - plane.bx * x - plane.by * y;
    const corners = [0, 10].flatMap((x) => [0, 10].map((y) => deviation(x, y)));
    const summit = deviation(x0 - plane.bx / (2 * c), y0 - plane.by / (2 * c));
    expect(device!.minimum).toBeCloseTo(0.2 + 0.5 * Math.min(...corners), 12);
    expect(device!.spread).toBeCloseTo(0.5 * (summit - Math.min(...corners)), 12);
    expect(device!.mean).toBeCloseTo(0.2 + 0.5 * (meanDome - plane.a - 5 * plane.bx - 5 * plane.by), 12);
    const { touchdown: _, ...unknown } = probes;
    expect(siteContact(unknown, true, dome)!.device).toBeNull();
  });

  it('is never below zero, and the mean counts lost probes as zero', () => {
    const few = { ...floating, preload: 0.029 };
    const { minimum, mean, spread, compression } = siteContact(few, false, dome)!.board!;
    expect([minimum, compression]).toEqual([0, 0]);
    expect(spread).toBeCloseTo(0.029 - 0.5 * lowest, 12);
    // Exact over the parts of the field where 0.029 - 0.5 w > 0, on a fine grid of points.
    let exact = 0;
    const n = 400;
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) {
        const [x, y] = [(10 * (i + 0.5)) / n, (10 * (j + 0.5)) / n];
        exact += Math.max(0, 0.029 - 0.5 * (0.06 - c * ((x - x0) ** 2 + (y - y0) ** 2))) / n ** 2;
      }
    const unclamped = 0.029 - 0.5 * meanDome;
    expect(exact).toBeGreaterThan(1.005 * unclamped);
    expect(Math.abs(mean / exact - 1)).toBeLessThan(0.002);
  });

  it('is not told without the rate', () => {
    const { rate: _, ...unknown } = probes;
    expect(siteContact(unknown, true, dome)).toBeNull();
  });

  it('adds up to the force on the head when probes relax', () => {
    expect(siteForce({ ...probes, relax: true }, dome)).toBeCloseTo(200 * (0.08 - 0.5 * meanDome), 11);
    expect(siteForce(probes, dome)).toBe(16);
  });
});

describe('mean over part of a mesh', () => {
  it('is weighted by area', () => {
    const tilt = fieldOf(
      (x, y) => 3 + x - 2 * y,
      () => 1,
      () => -2,
    );
    const { u, triangles } = tilt;
    expect(areaMean(mesh, u, { a: 0, bx: 0, by: 0 }, triangles, (w) => w)).toBeCloseTo(3 + 5 - 10, 12);
    expect(areaMean(mesh, u, { a: 3, bx: 1, by: -2 }, triangles, (w) => w)).toBeCloseTo(0, 12);
    expect(areaMean(mesh, u, { a: 0, bx: 0, by: 0 }, triangles, (w) => 2 * w + 1)).toBeCloseTo(-3, 12);
  });
});
