import { claim, look, Plan, wait } from './factor';
import { Front, frontAt } from './front';
import { F, less, more, rectangleRow, stride, triangleRow } from './layout';

/* Triangular solves within one front, as in ../src/linear-algebra/front-solve.ts, and over all fronts. */

/** `t <- t - A y` for a panel A of 6 rows and n columns. */
@inline
function subtractRows6(a: usize, n: u32, y: usize, t: usize): void {
  let t0 = v128.load(t, 0);
  let t1 = v128.load(t, 16);
  let t2 = v128.load(t, 32);
  for (let end = a + <usize>n * 48; a < end; a += 48) {
    const yk = v128.load64_splat(y);
    t0 = less(t0, v128.load(a, 0), yk);
    t1 = less(t1, v128.load(a, 16), yk);
    t2 = less(t2, v128.load(a, 32), yk);
    y += F;
  }
  v128.store(t, t0, 0);
  v128.store(t, t1, 16);
  v128.store(t, t2, 32);
}

/** The same for an odd last panel of 3 rows. */
function subtractRows3(a: usize, n: u32, y: usize, t: usize): void {
  let t0 = load<f64>(t, 0);
  let t1 = load<f64>(t, 8);
  let t2 = load<f64>(t, 16);
  for (; n > 0; n--) {
    const yk = load<f64>(y);
    t0 -= load<f64>(a, 0) * yk;
    t1 -= load<f64>(a, 8) * yk;
    t2 -= load<f64>(a, 16) * yk;
    a += 3 * F;
    y += F;
  }
  store<f64>(t, t0, 0);
  store<f64>(t, t1, 8);
  store<f64>(t, t2, 16);
}

/** `y <- y - A^T t` for a panel A of 6 rows and n columns, n a multiple of 3. */
@inline
function subtractColumns6(a: usize, n: u32, t: usize, y: usize): void {
  subtractColumns(a, n, v128.load(t, 0), v128.load(t, 16), v128.load(t, 32), y);
}

/** The same with t in hand. Two columns at a time, whose sums fill one vector. */
@inline
function subtractColumns(a: usize, n: u32, t0: v128, t1: v128, t2: v128, y: usize): void {
  const end = a + 48 * <usize>n;
  for (; a + 48 < end; a += 96) {
    const p = column6(a, t0, t1, t2);
    const q = column6(a + 48, t0, t1, t2);
    const sum = f64x2.add(v128.shuffle<f64>(p, q, 0, 2), v128.shuffle<f64>(p, q, 1, 3));
    v128.store(y, f64x2.sub(v128.load(y), sum));
    y += 2 * F;
  }
  if (a < end) {
    const p = column6(a, t0, t1, t2);
    store<f64>(y, load<f64>(y) - (f64x2.extract_lane(p, 0) + f64x2.extract_lane(p, 1)));
  }
}

/** Two partial sums of the product of a column of 6 and t. */
@inline
function column6(a: usize, t0: v128, t1: v128, t2: v128): v128 {
  return more(more(f64x2.mul(v128.load(a, 0), t0), v128.load(a, 16), t1), v128.load(a, 32), t2);
}

function subtractColumns3(a: usize, n: u32, t: usize, y: usize): void {
  const t0 = load<f64>(t, 0);
  const t1 = load<f64>(t, 8);
  const t2 = load<f64>(t, 16);
  for (; n > 0; n--) {
    store<f64>(y, load<f64>(y) - (load<f64>(a, 0) * t0 + load<f64>(a, 8) * t1 + load<f64>(a, 16) * t2));
    a += 3 * F;
    y += F;
  }
}

/** `y <- L^-1 y` for one diagonal block at stride s, reciprocals on its diagonal. */
function forwardBlock(d: usize, s: usize, y: usize): void {
  const y0 = load<f64>(y) * load<f64>(d);
  const y1 = (load<f64>(y, 8) - load<f64>(d, 8) * y0) * load<f64>(d + s, 8);
  store<f64>(y, y0);
  store<f64>(y, y1, 8);
  store<f64>(y, (load<f64>(y, 16) - load<f64>(d, 16) * y0 - load<f64>(d + s, 16) * y1) * load<f64>(d + 2 * s, 16), 16);
}

/** `y <- L^-T y` for one diagonal block. */
function backwardBlock(d: usize, s: usize, y: usize): void {
  const y2 = load<f64>(y, 16) * load<f64>(d + 2 * s, 16);
  const y1 = (load<f64>(y, 8) - load<f64>(d + s, 16) * y2) * load<f64>(d + s, 8);
  store<f64>(y, (load<f64>(y) - load<f64>(d, 8) * y1 - load<f64>(d, 16) * y2) * load<f64>(d));
  store<f64>(y, y1, 8);
  store<f64>(y, y2, 16);
}

/** `z <- z - C y` for a block C at stride 6. */
function subtractBlock(c: usize, y: usize, z: usize): void {
  for (let a: usize = 0; a < 3 * F; a += F) {
    const p =
      load<f64>(c + a, 0) * load<f64>(y, 0) + load<f64>(c + a, 48) * load<f64>(y, 8) + load<f64>(c + a, 96) * load<f64>(y, 16);
    store<f64>(z + a, load<f64>(z + a) - p);
  }
}

/** `z <- z - C^T y` for a block C at stride 6. */
function subtractTransposedBlock(c: usize, y: usize, z: usize): void {
  for (let b: usize = 0; b < 3; b++) {
    const column = c + b * 48;
    const p =
      load<f64>(column, 0) * load<f64>(y, 0) + load<f64>(column, 8) * load<f64>(y, 8) + load<f64>(column, 16) * load<f64>(y, 16);
    store<f64>(z + b * F, load<f64>(z + b * F) - p);
  }
}

/** `y <- L^-1 y` for the triangle at `pivot`. */
export function forwardPivot(pivot: usize, width: u32, y: usize): void {
  for (let i: u32 = 0; i < width; i += 2) {
    const s = stride(width, i);
    const row = pivot + triangleRow(width, i);
    const d = row + 3 * <usize>i * s;
    const here = y + 3 * <usize>i * F;
    if ((i | 1) < width) {
      subtractRows6(row, 3 * i, y, here);
      forwardBlock(d, s, here);
      subtractBlock(d + 3 * F, here, here + 3 * F);
      forwardBlock(d + 21 * F, s, here + 3 * F);
    } else {
      subtractRows3(row, 3 * i, y, here);
      forwardBlock(d, s, here);
    }
  }
}

/** `y <- L^-T y` for the triangle at `pivot`. */
export function backwardPivot(pivot: usize, width: u32, y: usize): void {
  for (let i: i32 = (width - 1) & ~1; i >= 0; i -= 2) {
    const s = stride(width, i);
    const row = pivot + triangleRow(width, i);
    const d = row + 3 * <usize>i * s;
    const here = y + 3 * <usize>i * F;
    if (<u32>(i | 1) < width) {
      backwardBlock(d + 21 * F, s, here + 3 * F);
      subtractTransposedBlock(d + 3 * F, here + 3 * F, here);
      backwardBlock(d, s, here);
      subtractColumns6(row, 3 * i, here, y);
    } else {
      backwardBlock(d, s, here);
      subtractColumns3(row, 3 * i, here, y);
    }
  }
}

/** `t <- t - B y` for the rectangle at `below`. */
export function forwardBelow(below: usize, width: u32, rows: u32, y: usize, t: usize): void {
  for (let i: u32 = 0; i < rows; i += 2) {
    const a = below + rectangleRow(rows, width, i);
    if ((i | 1) < rows) subtractRows6(a, 3 * width, y, t + 3 * <usize>i * F);
    else subtractRows3(a, 3 * width, y, t + 3 * <usize>i * F);
  }
}

/** `y <- y - B^T t` for the rectangle at `below`. */
export function backwardBelow(below: usize, width: u32, rows: u32, t: usize, y: usize): void {
  for (let i: u32 = 0; i < rows; i += 2) {
    const a = below + rectangleRow(rows, width, i);
    if ((i | 1) < rows) subtractColumns6(a, 3 * width, t + 3 * <usize>i * F, y);
    else subtractColumns3(a, 3 * width, t + 3 * <usize>i * F, y);
  }
}

/** `y <- L^-1 y` for one front; what it takes from the rows below goes where its targets say. */
@inline
function forwardFront(front: Front, y: usize): void {
  const here = y + 3 * F * <usize>front.first;
  forwardPivot(front.pivot, front.width, here);
  forwardRows(front, here, y);
}

/** `y <- L^-T y` for one front and all vectors of the solve: the first brings the front into the cache for the others. */
@inline
function backwardFront(plan: Plan, front: Front): void {
  for (let v: u32 = 0; v < plan.vectors; v++) {
    const y = plan.vector + plan.apart * <usize>v;
    const here = y + 3 * F * <usize>front.first;
    backwardRows(front, y, here);
    backwardPivot(front.pivot, front.width, here);
  }
}

/**
 * `y <- L^-1 y`, y in elimination order: the tasks, with whoever helps, then the fronts above. What a task takes from
 * rows above it gathers behind y, in a place of its own, and is added task by task: the same sums with any crew.
 */
export function forward(plan: Plan, y: usize): void {
  open(plan, y, 1, 0, true);
  share(plan);
  for (let k: u32 = 0; k < plan.taskCount; k++) collect(rootOf(plan, k), y);
  for (let k: u32 = 0; k < plan.topCount; k++) forwardFront(topAt(plan, k), y);
}

/**
 * `y <- L^-T y` for so many vectors, a distance apart: the fronts above the tasks, then the tasks, with whoever helps.
 * Each vector has the bits that it has alone.
 */
export function backward(plan: Plan, y: usize, vectors: u32, apart: usize): void {
  open(plan, y, vectors, apart, false);
  for (let k = plan.topCount; k > 0; k--) backwardFront(plan, topAt(plan, k - 1));
  share(plan);
}

@inline
function topAt(plan: Plan, k: u32): Front {
  return frontAt(plan.fronts, load<u32>(plan.tops + 4 * <usize>k));
}

/** Last front of a task, whose rows are all that the task reaches above itself. */
@inline
function rootOf(plan: Plan, k: u32): Front {
  return frontAt(plan.fronts, load<u32>(plan.tasks + 8 * <usize>k, 4) - 1);
}

/** Adds to y what a task left for the rows above it. */
function collect(root: Front, y: usize): void {
  for (let i: usize = 0; i < <usize>root.below; i++) {
    const to = y + 3 * F * <usize>load<u32>(root.rows + 4 * i);
    const from = y + 3 * F * <usize>load<u32>(root.targets + 4 * i);
    store<f64>(to, load<f64>(to, 0) + load<f64>(from, 0), 0);
    store<f64>(to, load<f64>(to, 8) + load<f64>(from, 8), 8);
    store<f64>(to, load<f64>(to, 16) + load<f64>(from, 16), 16);
  }
}

/** Notes what the next solve is of. */
function open(plan: Plan, y: usize, vectors: u32, apart: usize, ahead: bool): void {
  plan.vector = y;
  plan.vectors = vectors;
  plan.apart = apart;
  plan.ahead = ahead ? 1 : 0;
}

/** Does all tasks of a solve, with the helpers that come. */
function share(plan: Plan): void {
  const base = changetype<usize>(plan);
  atomic.store<u32>(base + offsetof<Plan>('solvesDone'), 0);
  atomic.store<u32>(base + offsetof<Plan>('nextSolve'), 0);
  claim(base + offsetof<Plan>('opened'));
  solveTasks(plan);
  const done = base + offsetof<Plan>('solvesDone');
  let turn: u32 = 0;
  for (let now = look(done); now < plan.taskCount; now = wait(plan, done, now, ++turn)) {}
}

/** What a helper does for the solve of that number, forward and backward ones counted together. */
export function helpSolve(plan: Plan, number: u32): void {
  const opened = changetype<usize>(plan) + offsetof<Plan>('opened');
  let turn: u32 = 0;
  for (let now = look(opened); now < number; now = wait(plan, opened, now, ++turn)) {}
  solveTasks(plan);
  claim(changetype<usize>(plan) + offsetof<Plan>('gone'));
}

/**
 * Claims tasks of the latest solve until none is left. Which solve that is shows after the claim only: a late helper may
 * claim for the next one.
 */
function solveTasks(plan: Plan): void {
  const next = changetype<usize>(plan) + offsetof<Plan>('nextSolve');
  for (let k = claim(next); k < plan.taskCount; k = claim(next)) {
    if (plan.ahead !== 0) forwardTask(plan, k, plan.vector);
    else backwardTask(plan, k);
    claim(changetype<usize>(plan) + offsetof<Plan>('solvesDone'));
  }
}

/** Reads and writes its own part of y and what it leaves for the rows above. */
function forwardTask(plan: Plan, k: u32, y: usize): void {
  const root = rootOf(plan, k);
  if (root.below > 0) memory.fill(y + 3 * F * <usize>load<u32>(root.targets), 0, 3 * F * <usize>root.below);
  const to = load<u32>(plan.tasks + 8 * <usize>k, 4);
  for (let s = load<u32>(plan.tasks + 8 * <usize>k); s < to; s++) forwardFront(frontAt(plan.fronts, s), y);
}

/** Reads what is above it and writes its own part of each vector. */
function backwardTask(plan: Plan, k: u32): void {
  const from = load<u32>(plan.tasks + 8 * <usize>k);
  for (let s = load<u32>(plan.tasks + 8 * <usize>k, 4); s > from; ) backwardFront(plan, frontAt(plan.fronts, --s));
}

/** `y_rows <- y_rows - B y_here` for the rectangle of a front, its rows where its targets say. */
@inline
function forwardRows(front: Front, here: usize, y: usize): void {
  const below = front.below;
  const n = 3 * front.width;
  for (let i: u32 = 0; i < below; i += 2) {
    let a = front.rectangle + rectangleRow(below, front.width, i);
    const targets = front.targets + 4 * <usize>i;
    const upper = y + 3 * F * <usize>load<u32>(targets);
    if ((i | 1) >= below) {
      subtractRows3(a, n, here, upper);
      return;
    }
    const lower = y + 3 * F * <usize>load<u32>(targets, 4);
    let t0 = v128.load(upper);
    let t1 = v128.load_lane<f64>(lower, v128.load64_zero(upper, 16), 1);
    let t2 = v128.load(lower, 8);
    let k = here;
    for (const end = a + 6 * F * <usize>n; a < end; a += 6 * F) {
      const yk = v128.load64_splat(k);
      t0 = less(t0, v128.load(a, 0), yk);
      t1 = less(t1, v128.load(a, 16), yk);
      t2 = less(t2, v128.load(a, 32), yk);
      k += F;
    }
    v128.store(upper, t0);
    v128.store_lane<f64>(upper, t1, 0, 16);
    v128.store_lane<f64>(lower, t1, 1);
    v128.store(lower, t2, 8);
  }
}

/** `y_here <- y_here - B^T y_rows`. Over all fronts the factor is read once, from its beginning to its end. */
@inline
function backwardRows(front: Front, y: usize, here: usize): void {
  const below = front.below;
  const n = 3 * front.width;
  for (let i: u32 = 0; i < below; i += 2) {
    const a = front.rectangle + rectangleRow(below, front.width, i);
    const rows = front.rows + 4 * <usize>i;
    const upper = y + 3 * F * <usize>load<u32>(rows);
    if (<u32>(i | 1) >= below) {
      subtractColumns3(a, n, upper, here);
      continue;
    }
    const lower = y + 3 * F * <usize>load<u32>(rows, 4);
    const t0 = v128.load(upper);
    const t1 = v128.load_lane<f64>(lower, v128.load64_zero(upper, 16), 1);
    const t2 = v128.load(lower, 8);
    subtractColumns(a, n, t0, t1, t2, here);
  }
}
