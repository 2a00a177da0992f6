import { children, NONE, postorder } from './elimination-tree.ts';
import type { Supernodes } from './supernode.ts';

/*
 * Time of one front, in units of one multiply-add at full speed, in blocks: a fixed cost, a cost per entry of the
 * pivot columns (fill, solve) and per entry of the update (extend-add, rank-k store), and the arithmetic.
 */
const PER_FRONT = 6000;
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
  const { first, parent } = supernodes;
  const { joins, width, height } = weigh(supernodes);
  const tops: number[] = [];
  for (let s = 0; s < parent.length; s++) if (joins[s] === 0) tops.push(s);
  const group = new Uint32Array(parent.length);
  for (let s = parent.length - 1, g = tops.length; s >= 0; s--) group[s] = joins[s] === 1 ? group[parent[s]] : --g;
  const groupParent = Int32Array.from(tops, (s) => (parent[s] === NONE ? NONE : group[parent[s]]));
  const depthFirst = postorder(groupParent);

  const rank = new Uint32Array(tops.length);
  const newFirst = new Uint32Array(tops.length + 1);
  depthFirst.forEach((g, k) => {
    rank[g] = k;
    newFirst[k + 1] = newFirst[k] + width[tops[g]];
  });
  const sequence = new Uint32Array(first[parent.length]);
  const next = newFirst.slice();
  for (let s = 0; s < parent.length; s++)
    for (let j = first[s]; j < first[s + 1]; j++) sequence[next[rank[group[s]]]++] = j;
  return {
    supernodes: {
      first: newFirst,
      parent: Int32Array.from(depthFirst, (g) => (groupParent[g] === NONE ? NONE : rank[groupParent[g]])),
      height: Uint32Array.from(depthFirst, (g) => height[tops[g]]),
    },
    sequence,
  };
}

/** Which supernodes join their parents, and how tall the fronts grow, children first. */
function weigh({ first, parent, height }: Supernodes) {
  const count = parent.length;
  const width = new Uint32Array(count);
  for (let s = 0; s < count; s++) width[s] = first[s + 1] - first[s];
  const tall = Uint32Array.from(height);
  const joins = new Uint8Array(count);
  const { firstChild, nextSibling } = children(parent);
  for (let p = 0; p < count; p++)
    for (let c = firstChild[p]; c !== NONE; c = nextSibling[c]) {
      const joined = frontTime(width[p] + width[c], tall[p] + width[c]);
      if (joined > frontTime(width[p], tall[p]) + frontTime(width[c], tall[c])) continue;
      joins[c] = 1;
      width[p] += width[c];
      tall[p] += width[c];
    }
  return { joins, width, height: tall };
}
