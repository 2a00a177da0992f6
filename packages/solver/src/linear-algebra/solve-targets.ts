import type { Symbolic } from './symbolic.ts';

/** Block rows that the tasks of a schedule reach above themselves, each task's counted apart. */
export function reachOfTasks({ rowStart, schedule: { task } }: Pick<Symbolic, 'rowStart' | 'schedule'>): number {
  let reach = 0;
  for (let k = 1; k < task.length; k += 2) reach += rowStart[task[k]] - rowStart[task[k] - 1];
  return reach;
}

/**
 * Where a forward solve puts what each row below a front takes: its own position, but in tasks, for rows above the task,
 * a place behind the n positions that is the task's alone. So tasks can run at once, and their shares be added in order.
 *
 * All rows that a subtree reaches above itself are rows of its root (Liu 1990, theorem on the row structure of subtrees),
 * so the places of a task are as many as its root has rows, in their order.
 *
 * @returns `[row.length]` block positions, below `n + reachOfTasks`
 */
export function solveTargets({ n, first, row, rowStart, schedule: { task } }: Symbolic): Uint32Array {
  const target = row.slice();
  const place = new Uint32Array(n);
  let behind = n;
  for (let k = 0; k < task.length; k += 2) {
    const root = task[k + 1] - 1;
    for (let r = rowStart[root]; r < rowStart[root + 1]; r++) place[row[r]] = behind++;
    const above = first[root + 1];
    for (let r = rowStart[task[k]]; r < rowStart[root + 1]; r++) if (row[r] >= above) target[r] = place[row[r]];
  }
  return target;
}
