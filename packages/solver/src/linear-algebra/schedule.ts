import { children, NONE } from './elimination-tree.ts';
import { triangleSize } from './front-layout.ts';
import type { Supernodes } from './supernode.ts';

/**
 * How a factorisation is shared out: subtrees of the elimination tree are tasks, each done by one worker on a stack of
 * its own; the few large fronts above are done by all together. The same whatever the number of workers.
 */
export interface Schedule {
  /** `[2 * nTasks]` first front of each task and the one past its last, which is the root; the longest task first. */
  readonly task: Uint32Array;
  /** Fronts above the tasks, children first. */
  readonly top: Uint32Array;
  /** `[nSupernodes]` address of the update triangle: within a worker's stack, for roots of tasks and above within the pool. */
  readonly updateAt: Uint32Array;
  /** Numbers that one worker's stack takes. */
  readonly stackSize: number;
  /** Numbers that the pool of the other updates takes. */
  readonly poolSize: number;
}

/** Part of all arithmetic that a task may take before it is cut further. */
const LARGEST_TASK = 1 / 24;
/** Arithmetic that isn't worth handing over, in additions and multiplications: some 2 ms. */
const LEAST_TASK = 1e7;

/** @param flops `[nSupernodes]` arithmetic of each front */
export function schedule(supernodes: Supernodes, flops: Float64Array): Schedule {
  const { parent } = supernodes;
  const count = parent.length;
  const work = flops.slice();
  const begin = new Uint32Array(count);
  for (let s = 0; s < count; s++) begin[s] = s;
  let total = 0;
  for (let s = 0; s < count; s++) {
    const p = parent[s];
    if (p === NONE) total += work[s];
    else {
      work[p] += work[s];
      begin[p] = Math.min(begin[p], begin[s]);
    }
  }
  const largest = Math.max(LEAST_TASK, total * LARGEST_TASK);
  const isTop = (s: number) => s !== NONE && work[s] > largest;
  const top: number[] = [];
  const roots: number[] = [];
  for (let s = 0; s < count; s++)
    if (isTop(s)) top.push(s);
    else if (parent[s] === NONE || isTop(parent[s])) roots.push(s);

  const updateAt = new Uint32Array(count);
  let stackSize = 0;
  for (const root of roots) stackSize = Math.max(stackSize, stackUpdates(supernodes, begin[root], root, updateAt));
  const poolSize = poolUpdates(supernodes, roots, top, updateAt);
  roots.sort((a, b) => work[b] - work[a] || a - b);
  const task = Uint32Array.from(roots.flatMap((root) => [begin[root], root + 1]));
  return { task, top: Uint32Array.from(top), updateAt, stackSize, poolSize };
}

/**
 * Places the updates below the root of one task on two stacks, for even and odd depths: a front then reads its
 * children's updates off the top of one while it writes its own on top of the other. Returns the room they take.
 */
function stackUpdates(
  { first, parent, height }: Supernodes,
  from: number,
  root: number,
  updateAt: Uint32Array,
): number {
  const odd = new Uint8Array(root + 1 - from);
  for (let s = root - 1; s >= from; s--) odd[s - from] = 1 - odd[parent[s] - from];
  const top = [0, 0];
  const peak = [0, 0];
  // Where the stack stood before the first child of each front came onto it.
  const base = new Float64Array(root + 1 - from).fill(NONE);
  for (let s = from; s < root; s++) {
    const own = odd[s - from];
    if (base[s - from] !== NONE) top[1 - own] = base[s - from];
    const p = parent[s] - from;
    if (base[p] === NONE) base[p] = top[own];
    updateAt[s] = top[own];
    top[own] += triangleSize(height[s] - (first[s + 1] - first[s]));
    peak[own] = Math.max(peak[own], top[own]);
  }
  for (let s = from; s < root; s++) if (odd[s - from] === 1) updateAt[s] += peak[0];
  return peak[0] + peak[1];
}

/** Places the updates of tasks, all of them there at once, and of the fronts above, first fit. Returns the room they take. */
function poolUpdates(
  { first, parent, height }: Supernodes,
  roots: readonly number[],
  top: readonly number[],
  updateAt: Uint32Array,
): number {
  const { firstChild, nextSibling } = children(parent);
  const size = (s: number) => triangleSize(height[s] - (first[s + 1] - first[s]));
  // Gaps as [from, to), ascending, the last one without end.
  let gaps: [number, number][] = [[0, Infinity]];
  let peak = 0;
  const place = (s: number) => {
    const need = size(s);
    const gap = gaps.find(([from, to]) => to - from >= need);
    if (gap === undefined) return;
    updateAt[s] = gap[0];
    gap[0] += need;
    peak = Math.max(peak, gap[0]);
  };
  const release = (s: number) => {
    const all: [number, number][] = [...gaps, [updateAt[s], updateAt[s] + size(s)]];
    all.sort((a, b) => a[0] - b[0]);
    gaps = [];
    for (const [from, to] of all) {
      const before = gaps.at(-1);
      if (before !== undefined && before[1] >= from) before[1] = Math.max(before[1], to);
      else gaps.push([from, to]);
    }
  };
  for (const s of roots) place(s);
  for (const s of top) {
    place(s);
    for (let c = firstChild[s]; c !== NONE; c = nextSibling[c]) release(c);
  }
  return peak;
}
