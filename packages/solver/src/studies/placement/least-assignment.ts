/**
 * Which column each row takes so that the costs add up to the least: the assignment problem by shortest augmenting paths
 * (Kuhn 1955, Munkres 1957; with potentials, from memory).
 *
 * @param cost of a row in a column, finite
 * @returns column of each row; -1 for rows left over where there are fewer columns
 */
export function leastAssignment(
  rows: number,
  columns: number,
  cost: (row: number, column: number) => number,
): number[] {
  if (rows > columns) {
    const taken: number[] = Array.from({ length: rows }, () => -1);
    for (const [column, row] of leastAssignment(columns, rows, (j, i) => cost(i, j)).entries()) taken[row] = column;
    return taken;
  }
  // Column 0 stands for none: rows and columns count from one.
  const rowOf = new Int32Array(columns + 1);
  const [ofRow, ofColumn] = [new Float64Array(rows + 1), new Float64Array(columns + 1)];
  const before = new Int32Array(columns + 1);
  for (let row = 1; row <= rows; row++) {
    rowOf[0] = row;
    let at = 0;
    const reach = new Float64Array(columns + 1).fill(Infinity);
    const isDone = new Uint8Array(columns + 1);
    while (rowOf[at] !== 0) {
      isDone[at] = 1;
      const from = rowOf[at];
      let [nearest, step] = [0, Infinity];
      for (let j = 1; j <= columns; j++) {
        if (isDone[j]) continue;
        const reduced = cost(from - 1, j - 1) - ofRow[from] - ofColumn[j];
        if (reduced < reach[j]) [reach[j], before[j]] = [reduced, at];
        if (reach[j] < step) [nearest, step] = [j, reach[j]];
      }
      for (let j = 0; j <= columns; j++)
        if (isDone[j]) {
          ofRow[rowOf[j]] += step;
          ofColumn[j] -= step;
        } else reach[j] -= step;
      at = nearest;
    }
    while (at !== 0) {
      rowOf[at] = rowOf[before[at]];
      at = before[at];
    }
  }
  const taken: number[] = Array.from({ length: rows }, () => -1);
  for (let j = 1; j <= columns; j++) if (rowOf[j] > 0) taken[rowOf[j] - 1] = j - 1;
  return taken;
}
