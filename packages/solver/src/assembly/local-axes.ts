import type { Holds } from './holds.ts';

/**
 * `Ke <- R' Ke R` to the local axes of the nodes of an element, then off-diagonals of held dofs to zero, in place.
 *
 * @param nodes block rows of the element at `nodes[from .. from + count)`, three dofs each
 * @param Ke `[(3 * count)^2]` row-major
 */
export function toLocalAxes(
  { cos, sin, mask }: Holds,
  nodes: Uint32Array,
  from: number,
  count: number,
  Ke: Float64Array,
): void {
  const size = 3 * count;
  for (let corner = 0; corner < count; corner++) {
    const node = nodes[from + corner];
    if (mask[node] === 0) continue;
    const c = cos[node];
    const s = sin[node];
    if (c !== 1) {
      const p = 3 * corner + 1;
      for (let q = 0; q < size; q++) {
        const a = Ke[size * p + q];
        const b = Ke[size * (p + 1) + q];
        Ke[size * p + q] = c * a + s * b;
        Ke[size * (p + 1) + q] = c * b - s * a;
      }
      for (let q = 0; q < size; q++) {
        const a = Ke[size * q + p];
        const b = Ke[size * q + p + 1];
        Ke[size * q + p] = c * a + s * b;
        Ke[size * q + p + 1] = c * b - s * a;
      }
    }
    for (let dof = 0; dof < 3; dof++) {
      if ((mask[node] & (1 << dof)) === 0) continue;
      const held = 3 * corner + dof;
      const own = Ke[(size + 1) * held];
      for (let q = 0; q < size; q++) Ke[size * held + q] = Ke[size * q + held] = 0;
      Ke[(size + 1) * held] = own;
    }
  }
}
