/**
 * Orders a small set of vertices by exact minimum degree (Tinney and Walker 1967) in the presence of a halo: vertices
 * that are eliminated later but count towards the degrees (Pellegrini, Roman and Amestoy 2000).
 *
 * @param inner number of vertices to order, numbered `0 .. inner - 1`; the halo is `inner .. inner + halo - 1`
 * @param adjacency `[inner * words]` bit rows, `words = ceil((inner + halo) / 32)`; destroyed
 * @param order receives the inner vertices in elimination order, `[inner]`
 */
export function minimumDegree(inner: number, words: number, adjacency: Uint32Array, order: Uint32Array): void {
  const degree = new Int32Array(inner);
  for (let v = 0; v < inner; v++) {
    adjacency[v * words + (v >>> 5)] &= ~(1 << (v & 31));
    degree[v] = countBits(adjacency, v * words, words);
  }
  const done = -1;
  for (let k = 0; k < inner; k++) {
    let pivot = -1;
    for (let v = 0; v < inner; v++) if (degree[v] !== done && (pivot < 0 || degree[v] < degree[pivot])) pivot = v;
    order[k] = pivot;
    degree[pivot] = done;
    const from = pivot * words;
    for (let word = 0; word << 5 < inner; word++)
      for (let bits = adjacency[from + word]; bits !== 0; bits &= bits - 1) {
        const u = (word << 5) + 31 - Math.clz32(bits & -bits);
        if (u >= inner) break;
        // The neighbours of the pivot become a clique: adj(u) = adj(u) + adj(pivot) - u - pivot.
        const at = u * words;
        for (let w = 0; w < words; w++) adjacency[at + w] |= adjacency[from + w];
        adjacency[at + (u >>> 5)] &= ~(1 << (u & 31));
        adjacency[at + (pivot >>> 5)] &= ~(1 << (pivot & 31));
        degree[u] = countBits(adjacency, at, words);
      }
  }
}

function countBits(words: Uint32Array, from: number, count: number): number {
  let sum = 0;
  for (let i = from; i < from + count; i++) {
    let v = words[i] | 0;
    v = v - ((v >>> 1) & 0x55555555);
    v = (v & 0x33333333) + ((v >>> 2) & 0x33333333);
    sum += Math.imul((v + (v >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
  }
  return sum;
}
