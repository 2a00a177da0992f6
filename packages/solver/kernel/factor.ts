import { clear, clearUpdate, enterBlocks, extendAdd, Front, frontAt } from './front';
import { rectangleRow, stride, triangleRow } from './layout';
import { factorPanel, productPanel, solvePanel } from './panel';

/*
 * The numeric factorisation. Subtrees of the elimination tree are tasks that workers claim one after another; each is
 * factorised front by front, its updates on the stack of its worker. The fronts above, few and large, are shared out by
 * panels. Every panel is computed in the same way whoever does it, so the factor has the same bits with any crew.
 */

/** What the crew of one factorisation shares; written by ../src/linear-algebra/front-table.ts. */
@unmanaged
export class Plan {
  fronts: usize;
  /** Tasks as first and past-last front, largest first. */
  tasks: usize;
  taskCount: u32;
  /** Fronts above the tasks, children first. */
  tops: usize;
  topCount: u32;
  /** Counters of the fronts above, one {@link Shared} each. */
  shared: usize;
  /** First stack, and the distance to the next. */
  stack: usize;
  stackBytes: usize;
  /** Workers on board, and how many there can be. */
  crew: u32;
  places: u32;
  /** Workers on board when the tasks were done; 0 before. */
  closed: u32;
  nextTask: u32;
  tasksDone: u32;
  /** 1 when all shall stop. */
  stop: u32;
  /** Smallest known scalar position of a pivot that is not positive. */
  failed: u32;
  /** Helpers that came and went, over all calls. */
  gone: u32;
  /** Solves that were opened to helpers; of the latest the first vector, and 1 when it is a forward one. */
  opened: u32;
  vector: usize;
  ahead: u32;
  nextSolve: u32;
  solvesDone: u32;
  /** How many vectors the latest solve has, and how far apart. */
  vectors: u32;
  apart: usize;
}

/** Counters of one shared front, on a cache line of its own. */
@unmanaged
class Shared {
  entered: u32;
  nextRow: u32;
  rowsDone: u32;
  rowsLeft: u32;
  nextProduct: u32;
  productsLeft: u32;
}

const LINE: usize = 64;

/** Turns that a worker looks again at once before it rests between two looks. */
const EAGER: u32 = 4000;

/**
 * Rests a little while a counter is at `now`: given by the host, ../src/linear-algebra/kernel-host.ts. The instruction
 * `memory.atomic.wait32` won't do: the first compiler of V8 11 (Node 20) loses locals across it, so that a worker went
 * on before others had finished.
 */
@external('env', 'rest')
declare function rest(counter: usize, now: u32): void;

/** One more look at a counter that is still at `now`; rests before when many were in vain. */
@inline
export function wait(plan: Plan, counter: usize, now: u32, turn: u32): u32 {
  if (turn > EAGER && plan.places > 1) rest(counter, now);
  return look(counter);
}

@inline
export function look(counter: usize): u32 {
  return atomic.load<u32>(counter);
}

@inline
export function claim(counter: usize): u32 {
  return atomic.add<u32>(counter, 1);
}

/** Waits until a counter reaches `count`; false when all shall stop. */
function reached(plan: Plan, counter: usize, count: u32): bool {
  let turn: u32 = 0;
  for (let now = look(counter); now < count; now = wait(plan, counter, now, ++turn))
    if (look(changetype<usize>(plan) + offsetof<Plan>('stop')) !== 0) return false;
  return true;
}

/** Notes a pivot that is not positive and stops everyone. */
function fail(plan: Plan, front: Front, column: i32): void {
  const at = changetype<usize>(plan) + offsetof<Plan>('failed');
  const position: u32 = 3 * front.first + <u32>column;
  for (let known = look(at); position < known; ) {
    const found = atomic.cmpxchg<u32>(at, known, position);
    if (found === known) break;
    known = found;
  }
  atomic.store<u32>(changetype<usize>(plan) + offsetof<Plan>('stop'), 1);
}

/** Comes on board: number of the worker, or -1 when it is too late or there is no place left. */
export function join(plan: Plan): i32 {
  const crew = changetype<usize>(plan) + offsetof<Plan>('crew');
  for (let size = look(crew); size < plan.places; ) {
    const found = atomic.cmpxchg<u32>(crew, size, size + 1);
    if (found === size) return size;
    size = found;
  }
  return -1;
}

/** Claims and does the next task - to factorise a subtree, or to fill a front above them; false when none is left. */
export function takeTask(plan: Plan, worker: u32): bool {
  const base = changetype<usize>(plan);
  if (look(base + offsetof<Plan>('stop')) !== 0) return false;
  const k = claim(base + offsetof<Plan>('nextTask'));
  if (k >= plan.taskCount + plan.topCount) return false;
  if (k >= plan.taskCount) fill(frontAt(plan.fronts, load<u32>(plan.tops + 4 * <usize>(k - plan.taskCount))));
  else if (!factorSubtree(plan, k, worker)) return false;
  claim(base + offsetof<Plan>('tasksDone'));
  return true;
}

/** Enters the matrix into the pivot columns of a front, where anything may have been before. */
@inline
function fill(front: Front): void {
  clear(front);
  enterBlocks(front);
}

/** Factorises the fronts of one task; false when a pivot is not positive. */
function factorSubtree(plan: Plan, k: u32, worker: u32): bool {
  const from = load<u32>(plan.tasks + 8 * <usize>k);
  const to = load<u32>(plan.tasks + 8 * <usize>k, 4);
  const stack = plan.stack + <usize>worker * plan.stackBytes;
  for (let s = from; s < to; s++) {
    const front = frontAt(plan.fronts, s);
    const update = s + 1 < to ? stack + front.update : front.update;
    fill(front);
    clearUpdate(front, update, 0, 1);
    for (let c = front.child; c >= 0; c = frontAt(plan.fronts, c).sibling) {
      const child = frontAt(plan.fronts, c);
      extendAdd(front, update, child, stack + child.update, 0, 1);
    }
    const failed = factorFront(front, update);
    if (failed >= 0) {
      fail(plan, front, failed);
      return false;
    }
  }
  return true;
}

/** Factor of one front that is filled; first column whose pivot is not positive, or -1. */
function factorFront(front: Front, update: usize): i32 {
  const width = front.width;
  const below = front.below;
  const pivot = front.pivot;
  const rectangle = front.rectangle;
  for (let i: u32 = 0; i < width; i += 2) {
    const s = stride(width, i);
    const row = pivot + triangleRow(width, i);
    const pair = (i | 1) < width;
    solvePanel(row, s, pair, pivot, width, 0, i);
    const failed = factorPanel(row, s, pair, i);
    if (failed >= 0) return failed;
  }
  for (let i: u32 = 0; i < below; i += 2)
    solvePanel(rectangle + rectangleRow(below, width, i), stride(below, i), (i | 1) < below, pivot, width, 0, width);
  for (let i: u32 = 0; i < below; i += 2) productPanel(rectangle, width, below, update, i);
  return -1;
}

/** Ends the tasks: waits for those under way, lets nobody join any more. Number of workers, or 0 when all shall stop. */
export function closeTasks(plan: Plan): u32 {
  const base = changetype<usize>(plan);
  if (!reached(plan, base + offsetof<Plan>('tasksDone'), plan.taskCount + plan.topCount)) return 0;
  // A late worker either got its place before this, or finds none.
  const crew = atomic.add<u32>(base + offsetof<Plan>('crew'), plan.places);
  atomic.store<u32>(base + offsetof<Plan>('closed'), crew);
  return crew;
}

/** Does a worker's part of the k-th front above the tasks; false when all shall stop. */
export function shareTop(plan: Plan, k: u32, worker: u32, workers: u32): bool {
  const s = load<u32>(plan.tops + 4 * <usize>k);
  const front = frontAt(plan.fronts, s);
  const shared = plan.shared + LINE * <usize>k;
  clearUpdate(front, front.update, worker, workers);
  for (let c = front.child; c >= 0; c = frontAt(plan.fronts, c).sibling) {
    const child = frontAt(plan.fronts, c);
    extendAdd(front, front.update, child, child.update, worker, workers);
  }
  claim(shared + offsetof<Shared>('entered'));
  if (!reached(plan, shared + offsetof<Shared>('entered'), workers)) return false;
  if (!shareRows(plan, front, shared)) return false;
  claim(shared + offsetof<Shared>('rowsLeft'));
  if (!reached(plan, shared + offsetof<Shared>('rowsLeft'), workers)) return false;
  // The longest panels first, so that the last ones to be claimed are short.
  const panels = (front.below + 1) >>> 1;
  for (let p = claim(shared + offsetof<Shared>('nextProduct')); p < panels; p = claim(shared + offsetof<Shared>('nextProduct')))
    productPanel(front.rectangle, front.width, front.below, front.update, 2 * (panels - 1 - p));
  claim(shared + offsetof<Shared>('productsLeft'));
  return reached(plan, shared + offsetof<Shared>('productsLeft'), workers);
}

/** Claims panels of the pivot triangle and then of the rectangle, each as far as the pivot panels before it are done. */
function shareRows(plan: Plan, front: Front, shared: usize): bool {
  const width = front.width;
  const below = front.below;
  const pivot = front.pivot;
  const rectangle = front.rectangle;
  const pivots = (width + 1) >>> 1;
  const panels = pivots + ((below + 1) >>> 1);
  const rowsDone = shared + offsetof<Shared>('rowsDone');
  for (let p = claim(shared + offsetof<Shared>('nextRow')); p < panels; p = claim(shared + offsetof<Shared>('nextRow'))) {
    const own = p < pivots;
    const i: u32 = 2 * (own ? p : p - pivots);
    const row = own ? pivot + triangleRow(width, i) : rectangle + rectangleRow(below, width, i);
    const rows: u32 = own ? width : below;
    const s = stride(rows, i);
    const pair = (i | 1) < rows;
    const upTo: u32 = own ? i : width;
    for (let from: u32 = 0; from < upTo; ) {
      if (!reached(plan, rowsDone, (from >>> 1) + 1)) return false;
      let ready: u32 = 2 * look(rowsDone);
      if (ready > upTo) ready = upTo;
      solvePanel(row, s, pair, pivot, width, from, ready);
      from = ready;
    }
    if (!own) continue;
    const failed = factorPanel(row, s, pair, i);
    if (failed >= 0) {
      fail(plan, front, failed);
      return false;
    }
    atomic.store<u32>(rowsDone, p + 1);
  }
  return true;
}

/** All that a helper does for one factorisation. */
export function help(plan: Plan): void {
  const worker = join(plan);
  if (worker >= 0) work(plan, worker);
  claim(changetype<usize>(plan) + offsetof<Plan>('gone'));
}

function work(plan: Plan, worker: u32): void {
  while (takeTask(plan, worker)) {}
  const closed = changetype<usize>(plan) + offsetof<Plan>('closed');
  if (!reached(plan, closed, 1)) return;
  const workers = look(closed);
  for (let k: u32 = 0; k < plan.topCount; k++) if (!shareTop(plan, k, worker, workers)) return;
}
