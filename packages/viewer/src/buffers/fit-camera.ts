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

/**
 * Where a perspective camera stands so that the corners of a box around the origin just fit the free part of the stage.
 *
 * @param half half extents of the box, mm
 * @param direction from the box to the camera; up on the screen is +z, or +y seen straight from above
 * @param fov vertical angle of view, degrees
 */
export function fitCamera(half: Vector, direction: Vector, fov: number, aspect: number, insets: Insets): CameraPlace {
  const n = unit(direction);
  const right = unit(Math.hypot(n[0], n[1]) < 1e-3 ? [1, 0, 0] : cross([0, 0, 1], n));
  const up = cross(n, right);
  const tanY = Math.tan((fov * Math.PI) / 360);
  const tanX = tanY * aspect;
  const freeX = 1 - insets.left - insets.right;
  const freeY = 1 - insets.top - insets.bottom;
  let distance = 0;
  for (let corner = 0; corner < 8; corner++) {
    const side = (axis: 0 | 1 | 2): number => (corner & (1 << axis) ? half[axis] : -half[axis]);
    const at: Vector = [side(0), side(1), side(2)];
    const depth = dot(at, n);
    distance = Math.max(
      distance,
      Math.abs(dot(at, right)) / (tanX * freeX) + depth,
      Math.abs(dot(at, up)) / (tanY * freeY) + depth,
    );
  }
  // The middle of the free part is the middle of the head: the camera looks beside it.
  const [x, y] = [(insets.right - insets.left) * tanX * distance, (insets.top - insets.bottom) * tanY * distance];
  const target = sum(scaled(right, x), scaled(up, y));
  return { position: sum(target, scaled(n, distance)), target };
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
