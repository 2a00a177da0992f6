import { F, rectangleRow, stride, triangleBytes, triangleRow } from './layout';

/*
 * Fronts as the factorisation finds them in memory, and how an update enters the front above. The table is written by
 * ../src/linear-algebra/front-table.ts; addresses are in bytes.
 */

@unmanaged
export class Front {
  /** Block columns eliminated here, and block rows below them. */
  width: u32;
  below: u32;
  /** List of the positions of those rows, and of their places in the parent's front. */
  rows: usize;
  relative: usize;
  /** List of where a forward solve puts what it takes from those rows: rows of y, or of what a task leaves behind it. */
  targets: usize;
  /** Pivot triangle, the rectangle below it, the update triangle: from the stack within a task, else absolute. */
  pivot: usize;
  rectangle: usize;
  update: usize;
  /** First child and next sibling, -1 for none. */
  child: i32;
  sibling: i32;
  /** Position of the first column. */
  first: u32;
  /** Blocks of the matrix that enter here, two words each: see {@link enterBlocks}. */
  entries: usize;
  entriesEnd: usize;
}

@inline
export function frontAt(fronts: usize, s: u32): Front {
  return changetype<Front>(fronts + <usize>s * offsetof<Front>());
}

@inline
function addTwo(to: usize, from: usize): void {
  v128.store(to, f64x2.add(v128.load(to), v128.load(from)));
}

@inline
function addOne(to: usize, from: usize): void {
  store<f64>(to, load<f64>(to) + load<f64>(from));
}

/** Adds consecutive blocks of one child row, at `u` of stride `us`, to the listed block columns of a row of stride s. */
@inline
function addRow(u: usize, us: usize, columns: usize, end: usize, row: usize, s: usize): void {
  for (; columns < end; columns += 4) {
    const t = row + 3 * s * <usize>load<u32>(columns);
    addTwo(t, u);
    addOne(t + 16, u + 16);
    addTwo(t + s, u + us);
    addOne(t + s + 16, u + us + 16);
    addTwo(t + 2 * s, u + 2 * us);
    addOne(t + 2 * s + 16, u + 2 * us + 16);
    u += 3 * us;
  }
}

/** The same for two child rows that fall on one panel: blocks of 6x3, both at stride 6. */
@inline
function addPanel(u: usize, columns: usize, end: usize, row: usize): void {
  for (; columns < end; columns += 4) {
    const t = row + 18 * F * <usize>load<u32>(columns);
    for (let k: usize = 0; k < 18 * F; k += 16) addTwo(t + k, u + k);
    u += 18 * F;
  }
}

/**
 * Adds the update of a child to its parent's front: to the rows whose panel is `part` modulo `parts`, counted from the
 * pivot triangle's and from the rectangle's first panel.
 */
export function extendAdd(parent: Front, update: usize, child: Front, source: usize, part: u32, parts: u32): void {
  const count = child.below;
  const relative = child.relative;
  const width = parent.width;
  // The first rows of the child, and so the first columns, are pivots of the parent.
  let pivots: u32 = 0;
  while (pivots < count && load<u32>(relative + 4 * <usize>pivots) < width) pivots++;
  const split = relative + 4 * <usize>pivots;
  for (let i: u32 = 0; i < count; i++) {
    const r = load<u32>(relative + 4 * <usize>i);
    const place = i < pivots ? r : r - width;
    if (parts > 1 && (place >>> 1) % parts !== part) continue;
    const u = source + triangleRow(count, i);
    const us = stride(count, i);
    const columns = relative + 4 * <usize>(i + 1);
    const rows = i < pivots ? width : parent.below;
    const s = stride(rows, place);
    const pair =
      (i & 1) === 0 && (place & 1) === 0 && i + 1 < count && s === 6 * F && load<u32>(columns) === r + 1 && i + 1 !== pivots;
    if (i < pivots) {
      const row = parent.pivot + triangleRow(width, r);
      if (pair) addPanel(u, relative, columns + 4, row);
      else addRow(u, us, relative, columns, row, s);
    } else {
      const left = parent.rectangle + rectangleRow(rows, width, place);
      const right = update + triangleRow(rows, place) - 3 * <usize>width * s;
      const v = u + 3 * <usize>pivots * us;
      if (pair) {
        addPanel(u, relative, split, left);
        addPanel(v, split, columns + 4, right);
      } else {
        addRow(u, us, relative, split, left, s);
        addRow(v, us, split, columns, right, s);
      }
    }
    if (pair) i++;
  }
}

/**
 * Puts the blocks of the matrix into a front that is clear. The first word of an entry is the address in the front,
 * a multiple of 8, plus 1 when columns are 6 numbers apart there instead of 3, plus 2 when the elimination order turns
 * the block over the diagonal; the second is the address of the block, 3x3 by rows.
 */
export function enterBlocks(front: Front): void {
  for (let e = front.entries; e < front.entriesEnd; e += 8) {
    const word = load<u32>(e);
    const b: usize = load<u32>(e, 4);
    const s: usize = (word & 1) !== 0 ? 6 * F : 3 * F;
    let to: usize = word & ~7;
    // The front stores columns: a block that is turned gives its rows.
    const down: usize = (word & 2) !== 0 ? F : 3 * F;
    const across: usize = 4 * F - down;
    for (let from = b; from <= b + 2 * across; from += across) {
      store<f64>(to, load<f64>(from), 0);
      store<f64>(to, load<f64>(from + down), 8);
      store<f64>(to, load<f64>(from + 2 * down), 16);
      to += s;
    }
  }
}

/** Clears the pivot columns of a front, whose triangle follows the rectangle. */
@inline
export function clear(front: Front): void {
  memory.fill(front.rectangle, 0, triangleBytes(front.width) + 9 * F * <usize>(front.width * front.below));
}

/** Clears the update of a front, but for the panels of others. */
export function clearUpdate(front: Front, update: usize, part: u32, parts: u32): void {
  const below = front.below;
  if (parts === 1) {
    memory.fill(update, 0, triangleBytes(below));
    return;
  }
  for (let i: u32 = 2 * part; i < below; i += 2 * parts) {
    const columns = i + 2 < below ? i + 2 : below;
    memory.fill(update + triangleRow(below, i), 0, 3 * <usize>columns * stride(below, i));
  }
}
