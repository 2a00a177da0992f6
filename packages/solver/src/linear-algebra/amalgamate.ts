import { children, NONE } from './elimination-tree.ts';
import type { Supernodes } from './supernode.ts';

/*
 * Time of one front, in units of one multiply-add at full speed, in blocks: a fixed cost, a cost per entry of the
 * pivot columns (fill, solve) and per entry of the update (extend-add, rank-k store), and the arithmetic.
 */
const PER_FRONT = 3000;
const PER_FACTOR_ENTRY = 30;
const PER_UPDATE_ENTRY = 40;
const PER_PRODUCT = 27;

function frontTime(width: number, height: number): number {
  const below = height - width;
  // sum over the pivot columns of (rows left)^2 / 2, the products of one block column each
  const products = (width * (3 * height * below + width * width)) / 6;
  return (
    PER_FRONT +
    PER_FACTOR_ENTRY * (width * below + (width * width) / 2) +
    (PER_UPDATE_ENTRY * below * below) / 2 +
    PER_PRODUCT * products
  );
}

/**
 * Joins supernodes with their parents where one larger front is expected to take less time than two, zeros stored
 * included (relaxed supernodes, Ashcraft and Grimes 1989).
 *
 * @returns the supernodes and the `[n]` sequence of old positions, a postorder again
 */
export function amalgamate(supernodes: Supernodes): {
  readonly supernodes: Supernodes;
  readonly sequence: Uint32Array;
} {
  const { first, parent, height } = supernodes;
  const count = parent.length;
  const { firstChild, nextSibling, firstRoot } = children(parent);
  const width = new Uint32Array(count);
  const tall = Uint32Array.from(height);
  for (let s = 0; s < count; s++) width[s] = first[s + 1] - first[s];
  // Supernodes joined into one form a chain head -> next -> ... in elimination order, kept under the topmost.
  const head = new Int32Array(count);
  const next = new Int32Array(count).fill(NONE);
  for (let s = 0; s < count; s++) head[s] = s;

  for (let p = 0; p < count; p++) {
    let previous = NONE;
    for (let c = firstChild[p]; c !== NONE; ) {
      const after = nextSibling[c];
      const joinedTime = frontTime(width[p] + width[c], tall[p] + width[c]);
      if (joinedTime > frontTime(width[p], tall[p]) + frontTime(width[c], tall[c])) {
        previous = c;
        c = after;
        continue;
      }
      width[p] += width[c];
      tall[p] += width[c];
      // c's columns come right before p's: the chain of c, which ends in c, then the chain of p.
      next[c] = head[p];
      head[p] = head[c];
      // c's children take its place among p's children.
      let link = after;
      if (firstChild[c] !== NONE) {
        link = firstChild[c];
        let last = link;
        while (nextSibling[last] !== NONE) last = nextSibling[last];
        nextSibling[last] = after;
      }
      if (previous === NONE) firstChild[p] = link;
      else nextSibling[previous] = link;
      // The adopted children were weighed against c; they are not weighed again.
      if (firstChild[c] === NONE) c = after;
      else {
        let last = firstChild[c];
        while (nextSibling[last] !== after) last = nextSibling[last];
        previous = last;
        c = after;
      }
    }
  }
  return renumber();

  function renumber() {
    const sequence = new Uint32Array(first[count]);
    const newFirst: number[] = [];
    const newHeight: number[] = [];
    const newParent: number[] = [];
    const newNumber = new Int32Array(count).fill(NONE);
    let k = 0;
    const stack: number[] = [];
    const opened = new Uint8Array(count);
    const up: number[] = [];
    for (let root = firstRoot; root !== NONE; root = nextSibling[root]) {
      stack.push(root);
      while (stack.length > 0) {
        const s = stack[stack.length - 1];
        if (opened[s] === 0) {
          opened[s] = 1;
          const list: number[] = [];
          for (let c = firstChild[s]; c !== NONE; c = nextSibling[c]) list.push(c);
          for (let i = list.length - 1; i >= 0; i--) stack.push(list[i]);
          continue;
        }
        stack.pop();
        newNumber[s] = newFirst.length;
        newFirst.push(k);
        newHeight.push(tall[s]);
        up.push(s);
        for (let t = head[s]; ; t = next[t]) {
          for (let j = first[t]; j < first[t + 1]; j++) sequence[k++] = j;
          if (t === s) break;
        }
        for (let c = firstChild[s]; c !== NONE; c = nextSibling[c]) newParent[newNumber[c]] = newNumber[s];
        newParent[newNumber[s]] = NONE;
      }
    }
    newFirst.push(k);
    return {
      supernodes: {
        first: Uint32Array.from(newFirst),
        parent: Int32Array.from(newParent),
        height: Uint32Array.from(newHeight),
      },
      sequence,
    };
  }
}
