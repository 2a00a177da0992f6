type Vector = readonly [number, number, number];

/** Room left around the head, as shares of the stage that overlays may cover. */
export interface Insets {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface CameraPlace {
  readonly position: Vector;
  readonly target: Vector;
}

/** Rounds of correction; each leaves about a tenth of the misfit. */
const ROUNDS = 8;

/**
 * Where a perspective camera stands so that a box around the origin just fits the free part of the stage.
 *
 * @param half half extents of the box, mm
 * @param direction from the box to the camera; up on the screen is +z, or +y seen straight from above
 * @param fov vertical angle of view, degrees
 */
export function fitCamera(half: Vector, direction: Vector, fov: number, aspect: number, insets: Insets): CameraPlace {
  const n = unit(direction);
  const right = unit(Math.hypot(n[0], n[1]) < 1e-3 ? [1, 0, 0] : cross([0, 0, 1], n));
  const up = cross(n, right);
  const tan = Math.tan((fov * Math.PI) / 360);
  // Screen coordinates from -1 to 1.
  const free = {
    x: [-1 + 2 * insets.left, 1 - 2 * insets.right],
    y: [-1 + 2 * insets.bottom, 1 - 2 * insets.top],
  } as const;
  let target: Vector = [0, 0, 0];
  let distance = 4 * Math.hypot(...half);
  for (let round = 0; round < ROUNDS; round++) {
    const seen = [right, up].map((axis, k) => {
      const reach = tan * (k === 0 ? aspect : 1);
      const places = corners(half).map((corner) => {
        const from = sum(corner, scaled(target, -1));
        return dot(from, axis) / ((distance - dot(from, n)) * reach);
      });
      return { low: Math.min(...places), high: Math.max(...places), reach };
    });
    const share = Math.max(
      (seen[0].high - seen[0].low) / (free.x[1] - free.x[0]),
      (seen[1].high - seen[1].low) / (free.y[1] - free.y[0]),
    );
    const shift = (k: 0 | 1, [low, high]: readonly [number, number]): number =>
      ((seen[k].low + seen[k].high - low - high) / 2) * seen[k].reach * distance;
    target = sum(target, sum(scaled(right, shift(0, free.x)), scaled(up, shift(1, free.y))));
    distance *= share;
  }
  return { position: sum(target, scaled(n, distance)), target };
}

function corners(half: Vector): Vector[] {
  const sides = [-1, 1];
  return sides.flatMap((x) => sides.flatMap((y) => sides.map((z): Vector => [x * half[0], y * half[1], z * half[2]])));
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function sum(a: Vector, b: Vector): Vector {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

function scaled(a: Vector, by: number): Vector {
  return [a[0] * by, a[1] * by, a[2] * by];
}

function unit(a: Vector): Vector {
  return scaled(a, 1 / Math.hypot(...a));
}
