import { children } from './elimination-tree.ts';
import { solveTargets } from './solve-targets.ts';
import type { Symbolic } from './symbolic.ts';

/*
 * The fronts and the plan of a factorisation as the compiled kernel finds them in its memory: the records of
 * ../../kernel/front.ts and ../../kernel/factor.ts, in 32-bit words, behind the numbers.
 */

const FRONT_WORDS = 13;
const PLAN_WORDS = 32;
/** Words of a cache line, which the counters of a shared front have to themselves. */
const LINE = 16;

/** Where in a plan some of its words stand. */
export const PLAN = {
  taskCount: 2,
  crew: 8,
  nextTask: 11,
  stop: 13,
  failed: 14,
  gone: 15,
  opened: 16,
  nextSolve: 19,
  solvesDone: 20,
} as const;

/** The word `failed` of a plan as long as all pivots are positive. */
export const NOT_FAILED = 0xffffffff;

/** Words that the table takes. */
export function tableSize({ parent, row, entries, schedule }: Symbolic): number {
  const lists = 3 * row.length + 2 * entries.block.length + schedule.task.length + schedule.top.length;
  return LINE * (schedule.top.length + 1) + PLAN_WORDS + FRONT_WORDS * parent.length + lists;
}

/**
 * Writes the table.
 *
 * @param words the whole memory
 * @param at first word of the table
 * @param blocks address of the blocks of the matrix, in numbers
 * @param workers how many there can be
 * @returns address of the plan, bytes
 */
export function writeTable(symbolic: Symbolic, words: Uint32Array, at: number, blocks: number, workers: number) {
  const { first, parent, row, relative, rowStart, pivotAt, belowAt, factorSize, entries, schedule } = symbolic;
  const { task, top, updateAt, stackSize, poolSize } = schedule;
  const count = parent.length;
  const plan = Math.ceil(at / LINE) * LINE;
  const shared = plan + PLAN_WORDS;
  const fronts = shared + LINE * top.length;
  const rows = fronts + FRONT_WORDS * count;
  const places = rows + row.length;
  const targets = places + row.length;
  const blockEntries = targets + row.length;
  const tasks = blockEntries + 2 * entries.block.length;
  const tops = tasks + task.length;
  words.set(row, rows);
  words.set(relative, places);
  words.set(solveTargets(symbolic), targets);
  words.set(task, tasks);
  words.set(top, tops);
  for (let k = 0; k < entries.block.length; k++) {
    const turned = entries.block[k] < 0;
    const block = turned ? -1 - entries.block[k] : entries.block[k];
    words[blockEntries + 2 * k] = 8 * entries.at[k] + (entries.stride[k] === 6 ? 1 : 0) + (turned ? 2 : 0);
    words[blockEntries + 2 * k + 1] = 8 * (blocks + 9 * block);
  }

  // Below a root of a task updates stand on a stack, else in the pool.
  const pool = new Uint8Array(count);
  for (const s of top) pool[s] = 1;
  for (let k = 1; k < task.length; k += 2) pool[task[k] - 1] = 1;
  const { firstChild, nextSibling } = children(parent);
  for (let s = 0, w = fronts; s < count; s++) {
    words[w++] = first[s + 1] - first[s];
    words[w++] = rowStart[s + 1] - rowStart[s];
    words[w++] = 4 * (rows + rowStart[s]);
    words[w++] = 4 * (places + rowStart[s]);
    words[w++] = 4 * (targets + rowStart[s]);
    words[w++] = 8 * pivotAt[s];
    words[w++] = 8 * belowAt[s];
    words[w++] = 8 * (pool[s] === 1 ? factorSize + updateAt[s] : updateAt[s]);
    words[w++] = firstChild[s];
    words[w++] = nextSibling[s];
    words[w++] = first[s];
    words[w++] = 4 * (blockEntries + 2 * entries.start[s]);
    words[w++] = 4 * (blockEntries + 2 * entries.start[s + 1]);
  }
  // Counters start at zero.
  words.fill(0, plan, fronts);
  words.set(
    [
      4 * fronts,
      4 * tasks,
      task.length / 2,
      4 * tops,
      top.length,
      4 * shared,
      8 * (factorSize + poolSize),
      8 * stackSize,
      0,
      workers,
    ],
    plan,
  );
  words[plan + PLAN.failed] = NOT_FAILED;
  return 4 * plan;
}
