/** A triangle with its name; nodes counter-clockwise. */
export interface SampleTriangle {
  readonly name: string;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

const triangle = (name: string, corners: readonly (readonly [number, number])[]): SampleTriangle => ({
  name,
  x: Float64Array.from(corners, ([x]) => x),
  y: Float64Array.from(corners, ([, y]) => y),
});

export const sampleTriangles: readonly SampleTriangle[] = [
  triangle('right', [
    [0, 0],
    [1, 0],
    [0, 1],
  ]),
  triangle('equilateral', [
    [0, 0],
    [2, 0],
    [1, Math.sqrt(3)],
  ]),
  triangle('scalene far from the origin', [
    [103.2, -47.1],
    [105.9, -46.3],
    [104.1, -44.8],
  ]),
  triangle('obtuse', [
    [0, 0],
    [5, 0.3],
    [-1.2, 1.1],
  ]),
  triangle('needle, 0.6 degrees', [
    [0, 0],
    [10, 0],
    [9, 0.1],
  ]),
  triangle('flat, 174 degrees', [
    [0, 0],
    [4, 0],
    [1.9, 0.1],
  ]),
  triangle('tiny', [
    [0, 0],
    [2e-3, 1e-4],
    [4e-4, 1.3e-3],
  ]),
];

export const sections = {
  isotropic: { bending: isotropic(1000, 0.3), shear: Float64Array.of(800, 0, 800) },
  orthotropic: { bending: Float64Array.of(1500, 210, 0, 400, 0, 260), shear: Float64Array.of(900, 0, 350) },
  'anisotropic, turned': {
    bending: Float64Array.of(1500, 210, 190, 700, -120, 320),
    shear: Float64Array.of(900, 140, 350),
  },
} as const;

function isotropic(D: number, nu: number): Float64Array {
  return Float64Array.of(D, nu * D, 0, D, 0, ((1 - nu) * D) / 2);
}

/** Largest magnitude. */
export function norm(values: ArrayLike<number>): number {
  return Array.from(values).reduce((max, v) => Math.max(max, Math.abs(v)), 0);
}
