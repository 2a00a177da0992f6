import type { HeadResult } from '@flathead/solver';

type Mesh = HeadResult['mesh'];

/** `nx` by `ny` squares over [-width/2, width/2] x [-height/2, height/2], each cut in two. */
export function gridMesh(nx: number, ny: number, width: number, height: number): Mesh {
  const x: number[] = [];
  const y: number[] = [];
  const triangles: number[] = [];
  for (let j = 0; j <= ny; j++)
    for (let i = 0; i <= nx; i++) {
      x.push((i / nx - 0.5) * width);
      y.push((j / ny - 0.5) * height);
    }
  for (let j = 0; j < ny; j++)
    for (let i = 0; i < nx; i++) {
      const a = j * (nx + 1) + i;
      const [b, c, d] = [a + 1, a + nx + 2, a + nx + 1];
      triangles.push(a, b, c, a, c, d);
    }
  return {
    x: Float64Array.from(x),
    y: Float64Array.from(y),
    triangles: Uint32Array.from(triangles),
    region: new Uint32Array(triangles.length / 3),
    boundary: new Uint32Array(0),
    minAngle: 45,
  };
}

/** Values of a function at the nodes. */
export function nodal({ x, y }: Mesh, f: (x: number, y: number) => number): Float64Array {
  return Float64Array.from(x, (_, i) => f(x[i], y[i]));
}
