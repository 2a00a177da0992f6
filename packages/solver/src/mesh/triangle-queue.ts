/** Triangles waiting to be improved, first in first out within each of a few grades, the lowest grade first. */
export interface TriangleQueue {
  readonly head: Int32Array;
  readonly tail: Int32Array;
  /** `[triangles]` */
  next: Int32Array;
  /** `[triangles]` */
  previous: Int32Array;
  /** `[triangles]` grade the triangle waits in, -1 when it does not wait. */
  grade: Int32Array;
  lowest: number;
}

export function triangleQueue(grades: number): TriangleQueue {
  return {
    head: new Int32Array(grades).fill(-1),
    tail: new Int32Array(grades).fill(-1),
    next: new Int32Array(0),
    previous: new Int32Array(0),
    grade: new Int32Array(0),
    lowest: grades,
  };
}

/** Moves a triangle to the end of a grade, or takes it out when the grade is -1. */
export function enqueue(queue: TriangleQueue, triangle: number, grade: number): void {
  if (triangle >= queue.grade.length) widen(queue, triangle + 1);
  if (queue.grade[triangle] === grade) return;
  if (queue.grade[triangle] >= 0) remove(queue, triangle);
  if (grade < 0) return;
  const { head, tail, next, previous } = queue;
  const last = tail[grade];
  previous[triangle] = last;
  next[triangle] = -1;
  if (last < 0) head[grade] = triangle;
  else next[last] = triangle;
  tail[grade] = triangle;
  queue.grade[triangle] = grade;
  if (grade < queue.lowest) queue.lowest = grade;
}

/** Takes the first triangle of the lowest grade, -1 when none waits. */
export function dequeue(queue: TriangleQueue): number {
  const { head } = queue;
  while (queue.lowest < head.length && head[queue.lowest] < 0) queue.lowest++;
  if (queue.lowest === head.length) return -1;
  const triangle = head[queue.lowest];
  remove(queue, triangle);
  return triangle;
}

function remove(queue: TriangleQueue, triangle: number): void {
  const { head, tail, next, previous, grade } = queue;
  const [before, after, own] = [previous[triangle], next[triangle], grade[triangle]];
  if (before < 0) head[own] = after;
  else next[before] = after;
  if (after < 0) tail[own] = before;
  else previous[after] = before;
  grade[triangle] = -1;
}

function widen(queue: TriangleQueue, least: number): void {
  const room = Math.max(least, 2 * queue.grade.length, 1024);
  const wide = (array: Int32Array) => {
    const wider = new Int32Array(room).fill(-1);
    wider.set(array);
    return wider;
  };
  queue.next = wide(queue.next);
  queue.previous = wide(queue.previous);
  queue.grade = wide(queue.grade);
}
