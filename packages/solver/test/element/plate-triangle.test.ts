import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { shearPlateCurvature, shearPlateStiffness, shearPlateStrain } from '../../src/element/shear-plate-triangle.ts';
import { thinPlateCurvature, thinPlateStiffness } from '../../src/element/thin-plate-triangle.ts';
import { radon7 } from './quadrature.ts';
import { norm, sampleTriangles, sections } from './sample-triangles.ts';

interface Element {
  readonly stiffness: (x: Float64Array, y: Float64Array, D: Float64Array, S: Float64Array) => Float64Array;
  readonly curvature: (
    x: Float64Array,
    y: Float64Array,
    D: Float64Array,
    S: Float64Array,
    l: readonly number[],
  ) => Float64Array;
  readonly shear: (
    x: Float64Array,
    y: Float64Array,
    D: Float64Array,
    S: Float64Array,
    l: readonly number[],
  ) => Float64Array;
}

const elements: Record<string, Element> = {
  thin: {
    stiffness: (x, y, D) => filled(81, (Ke) => thinPlateStiffness(x, y, D, Ke)),
    curvature: (x, y, _D, _S, [l0, l1, l2]) => filled(27, (B) => thinPlateCurvature(x, y, l0, l1, l2, B)),
    shear: () => new Float64Array(18),
  },
  shear: {
    stiffness: (x, y, D, S) => filled(81, (Ke) => shearPlateStiffness(x, y, D, S, Ke)),
    curvature: (x, y, D, S, [l0, l1, l2]) => filled(27, (B) => shearPlateCurvature(x, y, D, S, l0, l1, l2, B)),
    shear: (x, y, D, S, [l0, l1, l2]) => filled(18, (B) => shearPlateStrain(x, y, D, S, l0, l1, l2, B)),
  },
};

const cases = Object.entries(elements).flatMap(([theory, element]) =>
  Object.entries(sections).flatMap(([section, { bending, shear }]) =>
    sampleTriangles.map((triangle) => ({ theory, section, element, bending, shear, ...triangle })),
  ),
);

describe.each(cases)('$theory plate triangle, $section, $name', ({ theory, element, bending, shear, x, y }) => {
  const Ke = element.stiffness(x, y, bending, shear);

  it('has a symmetric stiffness', () => {
    for (let p = 0; p < 9; p++) for (let q = 0; q < p; q++) expect(Ke[9 * p + q]).toBe(Ke[9 * q + p]);
  });

  it('costs no energy in rigid motion and only there', () => {
    const size = Math.sqrt(Math.abs((x[1] - x[0]) * (y[2] - y[0]) - (x[2] - x[0]) * (y[1] - y[0])));
    // Rotations scaled to the size of the element, so that all dofs are lengths.
    const scaled = new Matrix(9, 9);
    const scale = [1, 1 / size, 1 / size];
    for (let p = 0; p < 9; p++)
      for (let q = 0; q < 9; q++) scaled.set(p, q, Ke[9 * p + q] * scale[p % 3] * scale[q % 3]);
    const eigenvalues = [...new EigenvalueDecomposition(scaled, { assumeSymmetric: true }).realEigenvalues].sort(
      (a, b) => a - b,
    );
    const largest = eigenvalues[8];
    expect(norm(eigenvalues.slice(0, 3)) / largest).toBeLessThan(1e-13);
    expect(eigenvalues[3] / largest).toBeGreaterThan(1e-9);
  });

  it('is the integral of its own strain energy', () => {
    // Degree 4 by a rule that the element does not use: exact for squares of linear strains and more.
    const energy = new Float64Array(81);
    const area = ((x[1] - x[0]) * (y[2] - y[0]) - (x[2] - x[0]) * (y[1] - y[0])) / 2;
    const D = full(bending);
    const S = [
      [shear[0], shear[1]],
      [shear[1], shear[2]],
    ];
    for (const { l, weight } of radon7) {
      addProduct(energy, element.curvature(x, y, bending, shear, l), D, weight * area);
      addProduct(energy, element.shear(x, y, bending, shear, l), S, weight * area);
    }
    expect(norm(energy.map((v, i) => v - Ke[i])) / norm(Ke)).toBeLessThan(1e-12);
  });

  it('gives constant curvature for a quadratic deflection, exactly', () => {
    // w = a x^2/2 + b x y + c y^2/2, no shear: kxx = -a, kyy = -c, 2 kxy = -2 b.
    const [a, b, c] = [0.7, -0.4, 1.1];
    const u = new Float64Array(9);
    for (let n = 0; n < 3; n++) {
      const [px, py] = [x[n] - x[0], y[n] - y[0]];
      u[3 * n] = (a * px * px) / 2 + b * px * py + (c * py * py) / 2;
      u[3 * n + 1] = b * px + c * py;
      u[3 * n + 2] = -(a * px + b * py);
    }
    for (const { l } of radon7) {
      const k = apply(element.curvature(x, y, bending, shear, l), u);
      expect(norm([k[0] + a, k[1] + c, k[2] + 2 * b])).toBeLessThan(1e-9);
      expect(norm(apply(element.shear(x, y, bending, shear, l), u))).toBeLessThan(1e-9);
    }
  });

  it('does not depend on the order of its nodes', () => {
    const turned = [1, 2, 0];
    const other = element.stiffness(
      Float64Array.from(turned, (n) => x[n]),
      Float64Array.from(turned, (n) => y[n]),
      bending,
      shear,
    );
    let difference = 0;
    for (let p = 0; p < 9; p++)
      for (let q = 0; q < 9; q++) {
        const [P, Q] = [3 * turned[Math.floor(p / 3)] + (p % 3), 3 * turned[Math.floor(q / 3)] + (q % 3)];
        difference = Math.max(difference, Math.abs(other[9 * p + q] - Ke[9 * P + Q]));
      }
    expect(difference / norm(Ke)).toBeLessThan(1e-11);
  });

  it('does not depend on the axes', () => {
    const angle = 0.83;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const turn = (px: number, py: number) => [cos * px - sin * py, sin * px + cos * py];
    const rotated = Array.from(x, (px, n) => turn(px, y[n]));
    const other = element.stiffness(
      Float64Array.from(rotated, ([px]) => px),
      Float64Array.from(rotated, ([, py]) => py),
      turnedBending(bending, cos, sin),
      turnedShear(shear, cos, sin),
    );
    const R = Matrix.eye(9, 9);
    for (let n = 0; n < 3; n++) {
      R.set(3 * n + 1, 3 * n + 1, cos);
      R.set(3 * n + 1, 3 * n + 2, -sin);
      R.set(3 * n + 2, 3 * n + 1, sin);
      R.set(3 * n + 2, 3 * n + 2, cos);
    }
    const back = R.transpose().mmul(matrix(other)).mmul(R);
    expect(norm(back.sub(matrix(Ke)).to1DArray()) / norm(Ke)).toBeLessThan(1e-10);
  });

  if (theory === 'shear')
    it('tends to the thin plate triangle as the shear stiffness grows', () => {
      const thin = elements.thin.stiffness(x, y, bending, shear);
      const size2 = (x[1] - x[0]) ** 2 + (y[1] - y[0]) ** 2;
      // t/L = 1e-6: shear stiffness over bending stiffness goes with 1/t^2.
      const stiff = shear.map((s) => (s * (1e12 * bending[0])) / (shear[0] * size2));
      const Kt = element.stiffness(x, y, bending, stiff);
      expect(norm(Kt.map((v, i) => v - thin[i])) / norm(thin)).toBeLessThan(1e-6);
    });
});

describe('shear plate triangle', () => {
  it.each(sampleTriangles)(
    'gives constant shear strain for a linear deflection of a plate soft in shear, $name',
    ({ x, y }) => {
      // The limit phi -> infinity, where curvature costs nothing beside shear; between the limits constant shear comes
      // with a linear moment, which nine dofs hold along each side but not inside.
      const { bending } = sections.orthotropic;
      const soft = Float64Array.of(9e-12, 2e-12, 5e-12);
      const [gx, gy] = [0.3, -0.8];
      const u = new Float64Array(9);
      for (let n = 0; n < 3; n++) u[3 * n] = 2 + gx * x[n] + gy * y[n];
      for (const { l } of radon7) {
        const gamma = apply(elements.shear.shear(x, y, bending, soft, l), u);
        expect(Math.hypot(gamma[0] - gx, gamma[1] - gy)).toBeLessThan(1e-6);
        expect(norm(apply(elements.shear.curvature(x, y, bending, soft, l), u))).toBeLessThan(1e-6);
      }
    },
  );

  it.each(sampleTriangles)('carries the exact shear strain of a beam along each side, $name', ({ x, y }) => {
    // Timoshenko beam along the side with end moment: beta = s^2/(2 D), w = -s^3/(6 D) + s/S, Q = 1.
    const { bending, shear } = sections.isotropic;
    for (let k = 0; k < 3; k++) {
      const [i, j] = [(k + 1) % 3, (k + 2) % 3];
      const [ex, ey] = [x[j] - x[i], y[j] - y[i]];
      const length = Math.hypot(ex, ey);
      const u = new Float64Array(9);
      const beta = length ** 2 / (2 * bending[0]);
      u[3 * j] = -(length ** 3) / (6 * bending[0]) + length / shear[0];
      u[3 * j + 1] = (-beta * ey) / length;
      u[3 * j + 2] = (beta * ex) / length;
      const l = [0, 0, 0];
      l[i] = 0.3;
      l[j] = 0.7;
      const gamma = apply(elements.shear.shear(x, y, bending, shear, l), u);
      expect((gamma[0] * ex + gamma[1] * ey) / length).toBeCloseTo(1 / shear[0], 12);
    }
  });
});

function filled(length: number, fill: (out: Float64Array) => void): Float64Array {
  const out = new Float64Array(length);
  fill(out);
  return out;
}

function full([a, b, c, d, e, f]: Float64Array): number[][] {
  return [
    [a, b, c],
    [b, d, e],
    [c, e, f],
  ];
}

function apply(B: Float64Array, u: Float64Array): number[] {
  return Array.from({ length: B.length / 9 }, (_, r) => u.reduce((sum, v, p) => sum + B[9 * r + p] * v, 0));
}

function addProduct(K: Float64Array, B: Float64Array, C: readonly number[][], factor: number): void {
  C.forEach((row, r) => {
    row.forEach((c, s) => {
      for (let p = 0; p < 9; p++) for (let q = 0; q < 9; q++) K[9 * p + q] += factor * B[9 * r + p] * c * B[9 * s + q];
    });
  });
}

function matrix(K: Float64Array): Matrix {
  return Matrix.from1DArray(9, 9, Array.from(K));
}

/** D in axes turned by the angle: k' = T k for the curvatures {kxx, kyy, 2 kxy}, D' = T^-T D T^-1. */
function turnedBending(D: Float64Array, c: number, s: number): Float64Array {
  // T^-1 is T of the opposite angle.
  const T = new Matrix([
    [c * c, s * s, -c * s],
    [s * s, c * c, c * s],
    [2 * c * s, -2 * c * s, c * c - s * s],
  ]);
  const inverse = new Matrix([
    [c * c, s * s, c * s],
    [s * s, c * c, -c * s],
    [-2 * c * s, 2 * c * s, c * c - s * s],
  ]);
  expect(norm(T.mmul(inverse).sub(Matrix.eye(3)).to1DArray())).toBeLessThan(1e-14);
  const turned = inverse
    .transpose()
    .mmul(new Matrix(full(D)))
    .mmul(inverse);
  return Float64Array.of(
    turned.get(0, 0),
    turned.get(0, 1),
    turned.get(0, 2),
    turned.get(1, 1),
    turned.get(1, 2),
    turned.get(2, 2),
  );
}

function turnedShear([a, b, d]: Float64Array, c: number, s: number): Float64Array {
  return Float64Array.of(
    c * c * a - 2 * c * s * b + s * s * d,
    c * s * (a - d) + (c * c - s * s) * b,
    s * s * a + 2 * c * s * b + c * c * d,
  );
}
