import { columnCounts } from '../../src/linear-algebra/column-count.ts';
import { eliminationTree, postorder } from '../../src/linear-algebra/elimination-tree.ts';
import type { Graph } from '../../src/linear-algebra/graph.ts';

export function inverse(permutation: Uint32Array): Uint32Array {
  const position = new Uint32Array(permutation.length);
  permutation.forEach((v, k) => {
    position[v] = k;
  });
  return position;
}

/** Block entries of the factor without relaxed supernodes, and the squares of its columns summed. */
export function fill(graph: Graph, permutation: Uint32Array): { readonly blocks: number; readonly work: number } {
  const tree = eliminationTree(graph, permutation, inverse(permutation));
  const depthFirst = postorder(tree).map((k) => permutation[k]);
  const position = inverse(depthFirst);
  let blocks = 0;
  let work = 0;
  for (const height of columnCounts(graph, depthFirst, position, eliminationTree(graph, depthFirst, position))) {
    blocks += height;
    work += height * height;
  }
  return { blocks, work };
}
