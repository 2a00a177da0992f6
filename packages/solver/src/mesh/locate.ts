import type { Mesh } from './mesh.ts';

/** Uniform grid of buckets over the triangles of a mesh; finds the triangle at a point without walking. */
export interface Locator {
  readonly mesh: Mesh;
  readonly xMin: number;
  readonly yMin: number;
  /** Side of a cell, mm. */
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  /** `[columns * rows + 1]` */
  readonly start: Uint32Array;
  /** `[start[columns * rows]]` triangles whose box meets the cell, ascending in each cell. */
  readonly entry: Uint32Array;
  /** A point this far outside of a triangle still counts as inside, mm: 1e-9 of the extent. */
  readonly tolerance: number;
}

/** Buckets of about two triangles. */
export function locator(mesh: Mesh): Locator {
  const { x, y, triangles } = mesh;
  const n = triangles.length / 3;
  let [xMin, yMin, xMax, yMax] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let v = 0; v < x.length; v++) {
    xMin = Math.min(xMin, x[v]);
    yMin = Math.min(yMin, y[v]);
    xMax = Math.max(xMax, x[v]);
    yMax = Math.max(yMax, y[v]);
  }
  const [width, height] = [xMax - xMin, yMax - yMin];
  const tolerance = 1e-9 * Math.max(width, height);
  const cell = Math.max(Math.sqrt((2 * width * height) / n), Math.max(width, height) / 4096);
  const columns = Math.floor(width / cell) + 1;
  const rows = Math.floor(height / cell) + 1;
  const place = (at: number, min: number, count: number) =>
    Math.min(count - 1, Math.max(0, Math.floor((at - min) / cell)));

  const box = new Uint16Array(4 * n);
  const start = new Uint32Array(columns * rows + 1);
  for (let t = 0; t < n; t++) {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    box[4 * t] = place(Math.min(x[a], x[b], x[c]) - tolerance, xMin, columns);
    box[4 * t + 1] = place(Math.max(x[a], x[b], x[c]) + tolerance, xMin, columns);
    box[4 * t + 2] = place(Math.min(y[a], y[b], y[c]) - tolerance, yMin, rows);
    box[4 * t + 3] = place(Math.max(y[a], y[b], y[c]) + tolerance, yMin, rows);
    eachCell(t, (at) => start[at + 1]++);
  }
  for (let i = 0; i < columns * rows; i++) start[i + 1] += start[i];
  const filled = start.slice();
  const entry = new Uint32Array(start[columns * rows]);
  for (let t = 0; t < n; t++)
    eachCell(t, (at) => {
      entry[filled[at]++] = t;
    });
  return { mesh, xMin, yMin, cell, columns, rows, start, entry, tolerance };

  function eachCell(t: number, visit: (at: number) => void): void {
    for (let row = box[4 * t + 2]; row <= box[4 * t + 3]; row++)
      for (let column = box[4 * t]; column <= box[4 * t + 1]; column++) visit(row * columns + column);
  }
}

/**
 * Triangle that holds the point, the first of several on a shared edge or node; -1 off the mesh.
 *
 * Points off the boundary by less than 1e-9 of the extent count as on it.
 */
export function locate(locator: Locator, x: number, y: number): number {
  const { mesh, xMin, yMin, cell, columns, rows, start, entry, tolerance } = locator;
  // What is no number is in no cell.
  const column = Math.min(columns - 1, Math.max(0, Math.floor((x - xMin) / cell)));
  const row = Math.min(rows - 1, Math.max(0, Math.floor((y - yMin) / cell)));
  const at = row * columns + column;
  let best = -1;
  let least = -tolerance;
  for (let i = start[at]; i < start[at + 1]; i++) {
    const inside = depth(mesh, entry[i], x, y);
    if (inside >= 0) return entry[i];
    if (inside >= least) {
      least = inside;
      best = entry[i];
    }
  }
  return best;
}

/** Distance of the point from the nearest side of a triangle, positive inside. */
function depth({ x, y, triangles }: Mesh, t: number, px: number, py: number): number {
  let least = Infinity;
  for (let k = 0; k < 3; k++) {
    const a = triangles[3 * t + k];
    const b = triangles[3 * t + (k === 2 ? 0 : k + 1)];
    const dx = x[b] - x[a];
    const dy = y[b] - y[a];
    least = Math.min(least, (dx * (py - y[a]) - dy * (px - x[a])) / Math.sqrt(dx * dx + dy * dy));
  }
  return least;
}

/** Triangles whose own box meets the box from (xMin, yMin) to (xMax, yMax), ascending, each once. */
export function trianglesIn(locator: Locator, xMin: number, yMin: number, xMax: number, yMax: number): Uint32Array {
  const { mesh, cell, columns, rows, start, entry } = locator;
  const { x, y, triangles } = mesh;
  const firstColumn = Math.max(0, Math.floor((xMin - locator.xMin) / cell));
  const lastColumn = Math.min(columns - 1, Math.floor((xMax - locator.xMin) / cell));
  const firstRow = Math.max(0, Math.floor((yMin - locator.yMin) / cell));
  const lastRow = Math.min(rows - 1, Math.floor((yMax - locator.yMin) / cell));
  const found: number[] = [];
  for (let row = firstRow; row <= lastRow; row++)
    for (let column = firstColumn; column <= lastColumn; column++) {
      const at = row * columns + column;
      for (let i = start[at]; i < start[at + 1]; i++) {
        const t = entry[i];
        const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
        const left = Math.min(x[a], x[b], x[c]);
        const low = Math.min(y[a], y[b], y[c]);
        if (left > xMax || low > yMax || Math.max(x[a], x[b], x[c]) < xMin || Math.max(y[a], y[b], y[c]) < yMin)
          continue;
        // A triangle in several cells counts in the first that it and the asked box share.
        const own = Math.max(firstColumn, Math.floor((left - locator.tolerance - locator.xMin) / cell));
        const ownRow = Math.max(firstRow, Math.floor((low - locator.tolerance - locator.yMin) / cell));
        if (own === column && ownRow === row) found.push(t);
      }
    }
  return Uint32Array.from(found).sort();
}

/** Barycentric coordinates of a point in a triangle, summing to one; one of them is negative outside. */
export function barycentric(mesh: Mesh, triangle: number, px: number, py: number): readonly [number, number, number] {
  const { x, y, triangles } = mesh;
  const [a, b, c] = [triangles[3 * triangle], triangles[3 * triangle + 1], triangles[3 * triangle + 2]];
  const twice = (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]);
  const first = ((x[b] - px) * (y[c] - py) - (x[c] - px) * (y[b] - py)) / twice;
  const second = ((x[c] - px) * (y[a] - py) - (x[a] - px) * (y[c] - py)) / twice;
  return [first, second, 1 - first - second];
}
