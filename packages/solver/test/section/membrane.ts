import { inverse, Matrix } from 'ml-matrix';
import type { Point, Region, Ring } from '../../src/geometry/point.ts';
import { shapeRing } from '../../src/geometry/ring.ts';
import type { BlockMatrix } from '../../src/linear-algebra/block-matrix.ts';
import { factorise } from '../../src/linear-algebra/factor.ts';
import { graphOf } from '../../src/linear-algebra/graph.ts';
import { order } from '../../src/linear-algebra/order.ts';
import { solve } from '../../src/linear-algebra/solve.ts';
import { analyse } from '../../src/linear-algebra/symbolic.ts';
import { meshDomain } from '../../src/mesh/mesh-domain.ts';

const square = (side: number): Ring => [
  [-side / 2, -side / 2],
  [side / 2, -side / 2],
  [side / 2, side / 2],
  [-side / 2, side / 2],
];

/**
 * Compliance times E of a square full of holes, each hole meshed: mean strains `{exx, eyy, 2 exy}` over a block in its
 * middle per mean stress there, both over holes and material, from three uniform tractions along the outline. Six-node
 * triangles in plane stress; mesher and equation solver are the program's, the rest is not.
 *
 * @param side of the square about the origin, mm
 * @param block side of the block, whose sides cut no hole, mm
 * @param size of elements, mm
 * @returns `[3 x 3]`
 */
export function drilledMembrane(
  side: number,
  block: number,
  holes: readonly Point[],
  diameter: number,
  nu: number,
  size: number,
): Matrix {
  const cut = holes.map(([x, y]) =>
    [...shapeRing({ circle: diameter, centre: [x, y] }, { chord: size / 60, path: '' })].reverse(),
  );
  const outline: Region = [square(side), ...cut];
  const mesh = meshDomain({ outline, regions: [square(block)] }, () => size);
  const x = [...mesh.x];
  const y = [...mesh.y];
  const middles = new Map<string, number>();
  const middle = (a: number, b: number): number => {
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    const known = middles.get(key);
    if (known !== undefined) return known;
    middles.set(key, x.length);
    y.push((y[a] + y[b]) / 2);
    return x.push((x[a] + x[b]) / 2) - 1;
  };
  const elements: number[][] = [];
  for (let t = 0; t < mesh.triangles.length; t += 3) {
    const [a, b, c] = mesh.triangles.subarray(t, t + 3);
    elements.push([a, b, c, middle(a, b), middle(b, c), middle(c, a)]);
  }
  const onOutline = (a: number, b: number) =>
    [a, b].every((i) => Math.max(Math.abs(x[i]), Math.abs(y[i])) > (side / 2) * (1 - 1e-9));
  const K = assembled(x, elements, (nodes) => elementStiffness(x, y, nodes, nu));
  const factor = factorise(analyse(K, order(graphOf(K), Float64Array.from(x), Float64Array.from(y))), K);

  const strains: number[][] = [];
  const stresses: number[][] = [];
  for (const [sxx, syy, sxy] of [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ]) {
    const f = new Float64Array(3 * x.length);
    for (let e = 0; e < mesh.boundary.length; e += 2) {
      const [a, b] = [mesh.boundary[e], mesh.boundary[e + 1]];
      if (!onOutline(a, b)) continue;
      // Outer normal to the right of a-b times its length; Simpson's shares of the three nodes.
      const [nx, ny] = [y[b] - y[a], x[a] - x[b]];
      for (const [node, share] of [
        [a, 1 / 6],
        [middle(a, b), 4 / 6],
        [b, 1 / 6],
      ]) {
        f[3 * node] += share * (sxx * nx + sxy * ny);
        f[3 * node + 1] += share * (sxy * nx + syy * ny);
      }
    }
    const u = solve(factor, f);
    const strain = [0, 0, 0];
    const stress = [0, 0, 0];
    elements.forEach((nodes, t) => {
      if (mesh.region[t] !== 1) return;
      for (const { weight, dx, dy } of gaussPoints(x, y, nodes)) {
        const e = [0, 0, 0];
        nodes.forEach((node, i) => {
          e[0] += dx[i] * u[3 * node];
          e[1] += dy[i] * u[3 * node + 1];
          e[2] += dy[i] * u[3 * node] + dx[i] * u[3 * node + 1];
        });
        const q = weight / (1 - nu * nu);
        stress[0] += q * (e[0] + nu * e[1]);
        stress[1] += q * (e[1] + nu * e[0]);
        stress[2] += (q * (1 - nu) * e[2]) / 2;
      }
      // Strain over holes as well: the outline of the block, `integral of sym(u n')` (Gauss).
      for (let k = 0; k < 3; k++) {
        const [a, b] = [nodes[k], nodes[(k + 1) % 3]];
        const onBlock =
          (x[a] === x[b] && Math.abs(Math.abs(x[a]) - block / 2) < 1e-9) ||
          (y[a] === y[b] && Math.abs(Math.abs(y[a]) - block / 2) < 1e-9);
        if (!onBlock) continue;
        const [nx, ny] = [y[b] - y[a], x[a] - x[b]];
        const mean = (d: number) => (u[3 * a + d] + 4 * u[3 * middle(a, b) + d] + u[3 * b + d]) / 6;
        strain[0] += mean(0) * nx;
        strain[1] += mean(1) * ny;
        strain[2] += mean(0) * ny + mean(1) * nx;
      }
    });
    strains.push(strain);
    stresses.push(stress);
  }
  const columns = (rows: number[][]) => new Matrix(rows).transpose();
  return columns(strains).mmul(inverse(columns(stresses)));
}

/** Points and weights of an element with the derivatives of its six shapes; exact for straight sides. */
function gaussPoints(x: number[], y: number[], [a, b, c]: number[]) {
  const twice = (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]);
  const gx = [y[b] - y[c], y[c] - y[a], y[a] - y[b]].map((v) => v / twice);
  const gy = [x[c] - x[b], x[a] - x[c], x[b] - x[a]].map((v) => v / twice);
  const sides = [
    [0, 1],
    [1, 2],
    [2, 0],
  ];
  return [0, 1, 2].map((corner) => {
    const L = [0, 1, 2].map((k) => (k === corner ? 2 / 3 : 1 / 6));
    const derivative = (g: number[]) => [
      ...L.map((l, k) => (4 * l - 1) * g[k]),
      ...sides.map(([i, j]) => 4 * (L[i] * g[j] + L[j] * g[i])),
    ];
    return { weight: twice / 6, dx: derivative(gx), dy: derivative(gy) };
  });
}

/** `[12 * 12]`, thickness and E one. */
function elementStiffness(x: number[], y: number[], nodes: number[], nu: number): Float64Array {
  const K = new Float64Array(144);
  for (const { weight, dx, dy } of gaussPoints(x, y, nodes)) {
    const q = weight / (1 - nu * nu);
    const g = (q * (1 - nu)) / 2;
    for (let i = 0; i < 6; i++)
      for (let j = 0; j < 6; j++) {
        const at = 24 * i + 2 * j;
        K[at] += q * dx[i] * dx[j] + g * dy[i] * dy[j];
        K[at + 1] += q * nu * dx[i] * dy[j] + g * dy[i] * dx[j];
        K[at + 12] += q * nu * dy[i] * dx[j] + g * dx[i] * dy[j];
        K[at + 13] += q * dy[i] * dy[j] + g * dx[i] * dx[j];
      }
  }
  return K;
}

/** Blocks of u, v and an idle third dof; two nodes on springs that carry nothing under balanced loads. */
function assembled(
  x: readonly number[],
  elements: number[][],
  stiffnessOf: (nodes: number[]) => Float64Array,
): BlockMatrix {
  const n = x.length;
  const rows = Array.from({ length: n }, (_, i) => new Map([[i, Float64Array.of(0, 0, 0, 0, 0, 0, 0, 0, 1)]]));
  for (const nodes of elements) {
    const K = stiffnessOf(nodes);
    for (let i = 0; i < 6; i++)
      for (let j = 0; j < 6; j++) {
        if (nodes[j] > nodes[i]) continue;
        let block = rows[nodes[i]].get(nodes[j]);
        if (block === undefined) {
          block = new Float64Array(9);
          rows[nodes[i]].set(nodes[j], block);
        }
        for (let r = 0; r < 2; r++) for (let c = 0; c < 2; c++) block[3 * r + c] += K[12 * (2 * i + r) + 2 * j + c];
      }
  }
  const far = x.reduce((best, value, i) => (Math.abs(value - x[0]) > Math.abs(x[best] - x[0]) ? i : best), 0);
  for (const [node, dof] of [
    [0, 0],
    [0, 1],
    [far, 1],
  ])
    rows[node].get(node)![4 * dof] += 1;
  const start = new Uint32Array(n + 1);
  const column: number[] = [];
  const value: number[] = [];
  rows.forEach((row, i) => {
    for (const [j, block] of [...row].sort(([p], [q]) => p - q)) {
      column.push(j);
      value.push(...block);
    }
    start[i + 1] = column.length;
  });
  return { n, start, column: Uint32Array.from(column), value: Float64Array.from(value) };
}
