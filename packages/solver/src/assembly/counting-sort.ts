/** Items in ascending order of `key[item]`, equal keys in the order given: a counting sort over keys 0 to n - 1. */
export function sortedBy(key: Uint32Array, items: Uint32Array, n: number): Uint32Array {
  const next = new Uint32Array(n + 1);
  for (let i = 0; i < items.length; i++) next[key[items[i]] + 1]++;
  for (let i = 0; i < n; i++) next[i + 1] += next[i];
  const sorted = new Uint32Array(items.length);
  for (let i = 0; i < items.length; i++) sorted[next[key[items[i]]]++] = items[i];
  return sorted;
}
