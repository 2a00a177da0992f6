import { describe, expect, it } from 'vitest';
import { directionRows, MOST_DIMENSIONS } from '../../../src/studies/tolerance/direction-numbers.ts';
import { scrambled } from '../../../src/studies/tolerance/scramble.ts';
import { directionsOf, sobolPoint } from '../../../src/studies/tolerance/sobol-sequence.ts';

const RANGE = 2 ** 32;
const points = (dimensions: number, count: number): number[][] => {
  const directions = directionsOf(dimensions);
  return Array.from({ length: count }, (_, i) => [...sobolPoint(directions, i)].map((x) => x / RANGE));
};

describe('direction numbers', () => {
  it('are of all primitive polynomials up to degree 8: phi(2^s - 1) / s of degree s', () => {
    const counts = directionRows.reduce<number[]>((all, { degree }) => {
      all[degree] = (all[degree] ?? 0) + 1;
      return all;
    }, []);
    expect(counts.slice(1)).toEqual([1, 1, 2, 2, 6, 6, 18, 16]);
    expect(MOST_DIMENSIONS).toBe(53);
  });

  it('are of polynomials that are primitive: x has order 2^s - 1 modulo each', () => {
    for (const { degree, inner } of directionRows) {
      const polynomial = (1 << degree) | (inner << 1) | 1;
      let power = 1;
      let order = 0;
      do {
        power <<= 1;
        if (power >> degree) power ^= polynomial;
        order += 1;
      } while (power !== 1 && order < 1 << degree);
      // Over GF(2) the only element of degree 0 is 1.
      expect(order, `s ${degree}, a ${inner}`).toBe(2 ** degree - 1);
    }
  });

  it('are odd and m_k < 2^k, so that each coordinate is a (0, 1) sequence', () => {
    for (const { degree, start } of directionRows) {
      expect(start).toHaveLength(degree);
      start.forEach((m, k) => {
        expect(m % 2).toBe(1);
        expect(m).toBeLessThan(2 ** (k + 1));
      });
    }
  });

  it('have property A (Sobol 1976), for which Joe and Kuo chose them: first digits of v_1 ... v_d independent mod 2', () => {
    for (let d = 1; d <= 32; d++) {
      // Row of dimension i: bit k is the first binary digit of v_k.
      const rows = directionsOf(d).map((v) =>
        v.slice(0, d).reduce((bits, x, k) => (x >>> 31 ? bits | (1n << BigInt(k)) : bits), 0n),
      );
      let rank = 0;
      for (let k = 0; k < d; k++) {
        const pivot = rows.findIndex((row, i) => i >= rank && (row >> BigInt(k)) & 1n);
        if (pivot < 0) continue;
        [rows[rank], rows[pivot]] = [rows[pivot], rows[rank]];
        rows.forEach((row, i) => {
          if (i !== rank && (row >> BigInt(k)) & 1n) rows[i] ^= rows[rank];
        });
        rank += 1;
      }
      expect(rank, `${d} dimensions`).toBe(d);
    }
  });
});

describe('Sobol sequence', () => {
  it('begins as by hand from m = 1, 3, 5 ... of x + 1 and m = 1, 3 of x^2 + x + 1', () => {
    // Dimension 2: v = .1, .11, .101; dimension 3: v = .1, .11, .001 (m_3 = 2*3 ^ 4*1 ^ 1 = 3, 3/8 = .011).
    expect(points(3, 8)).toEqual([
      [0, 0, 0],
      [0.5, 0.5, 0.5],
      [0.75, 0.25, 0.25],
      [0.25, 0.75, 0.75],
      [0.375, 0.375, 0.625],
      [0.875, 0.875, 0.125],
      [0.625, 0.125, 0.875],
      [0.125, 0.625, 0.375],
    ]);
  });

  it('has one of 2^k points in every interval of 2^-k, in every dimension', () => {
    const all = points(MOST_DIMENSIONS, 256);
    for (let dimension = 0; dimension < MOST_DIMENSIONS; dimension++) {
      const cells = new Set(all.map((point) => Math.floor(point[dimension] * 256)));
      expect(cells.size).toBe(256);
    }
  });

  it('integrates a product over 10 dimensions far better than chance', () => {
    const count = 4096;
    const mean = points(10, count).reduce((sum, point) => sum + point.reduce((p, x) => p * (0.5 + x), 1), 0) / count;
    // Variance of the product: (13/12)^10 - 1 = 1.226; chance gives an error of 1.1/64 = 0.017.
    expect(Math.abs(mean - 1)).toBeLessThan(0.003);
  });

  it('keeps its evenness when it is scrambled: one of 256 points in every box of 1/16 x 1/16 and of 1/4 x 1/64', () => {
    const all = points(2, 256);
    for (let seed = 1; seed < 50; seed++) {
      const mixed = all.map(([x, y]) =>
        [scrambled(x * RANGE, seed), scrambled(y * RANGE, seed * 7919)].map((c) => c / RANGE),
      );
      for (const [nx, ny] of [
        [16, 16],
        [4, 64],
        [256, 1],
      ]) {
        const cells = new Set(mixed.map(([x, y]) => Math.floor(x * nx) * ny + Math.floor(y * ny)));
        expect(cells.size).toBe(256);
      }
      expect(mixed[0]).not.toEqual(all[0]);
    }
  });

  it('is in no interval always at the same place, when scrambled', () => {
    const places = Array.from({ length: 256 }, (_, i) => (scrambled((i / 256) * RANGE, 5) / RANGE) * 256);
    const within = places.map((place) => place - Math.floor(place));
    const mean = within.reduce((sum, x) => sum + x, 0) / 256;
    const variance = within.reduce((sum, x) => sum + (x - mean) ** 2, 0) / 256;
    expect(mean).toBeCloseTo(0.5, 1);
    expect(variance).toBeCloseTo(1 / 12, 1);
  });
});
