import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AFTER, BEFORE, BETWEEN, bandFor, minimumVertexCuts } from '../../src/linear-algebra/vertex-cut.ts';
import { uniform } from './systems.ts';

interface Case {
  readonly n: number;
  readonly adjacent: boolean[][];
  readonly entry: boolean[];
  readonly exit: boolean[];
}

function randomCase(n: number, density: number, seed: number): Case {
  const next = uniform(seed);
  const adjacent = Array.from({ length: n }, () => new Array<boolean>(n).fill(false));
  for (let u = 0; u < n; u++) for (let v = 0; v < u; v++) if (next() < density) adjacent[u][v] = adjacent[v][u] = true;
  return {
    n,
    adjacent,
    entry: Array.from({ length: n }, () => next() < 0.3),
    exit: Array.from({ length: n }, () => next() < 0.3),
  };
}

function cutsOf({ n, adjacent, entry, exit }: Case): readonly Uint8Array[] {
  const band = bandFor(n, n * n);
  let end = 0;
  for (let u = 0; u < n; u++) {
    for (let v = n - 1; v >= 0; v--) if (adjacent[u][v]) band.neighbour[end++] = v;
    band.start[u + 1] = end;
    band.entry[u] = entry[u] ? 1 : 0;
    band.exit[u] = exit[u] ? 1 : 0;
  }
  minimumVertexCuts(band, n);
  return [band.front.slice(0, n), band.back.slice(0, n)];
}

/** Whether some path leads from an entry to an exit around the vertices removed. */
function crosses({ n, adjacent, entry, exit }: Case, removed: (v: number) => boolean): boolean {
  const reached = entry.map((is, v) => is && !removed(v));
  for (let round = 0; round < n; round++)
    for (let u = 0; u < n; u++)
      if (reached[u]) for (let v = 0; v < n; v++) if (adjacent[u][v] && !removed(v)) reached[v] = true;
  return reached.some((is, v) => is && exit[v]);
}

function smallest(given: Case): number {
  let best = given.n;
  for (let set = 0; set < 1 << given.n; set++) {
    const size = set.toString(2).split('1').length - 1;
    if (size < best && !crosses(given, (v) => ((set >> v) & 1) === 1)) best = size;
  }
  return best;
}

/** Largest flow from the entries to the exits, one path at a time, on a table of capacities. */
function disjointPaths({ n, adjacent, entry, exit }: Case): number {
  const source = 2 * n;
  const sink = 2 * n + 1;
  const capacity = Array.from({ length: 2 * n + 2 }, () => new Array<number>(2 * n + 2).fill(0));
  for (let u = 0; u < n; u++) {
    capacity[2 * u][2 * u + 1] = 1;
    if (entry[u]) capacity[source][2 * u] = n;
    if (exit[u]) capacity[2 * u + 1][sink] = n;
    for (let v = 0; v < n; v++) if (adjacent[u][v]) capacity[2 * u + 1][2 * v] = n;
  }
  const push = (at: number, seen: Set<number>): boolean => {
    if (at === sink) return true;
    seen.add(at);
    for (let to = 0; to < capacity.length; to++) {
      if (capacity[at][to] === 0 || seen.has(to) || !push(to, seen)) continue;
      capacity[at][to]--;
      capacity[to][at]++;
      return true;
    }
    return false;
  };
  let paths = 0;
  while (push(source, new Set())) paths++;
  return paths;
}

describe('minimumVertexCuts', () => {
  it('finds the smallest cut there is, twice, in random graphs', () => {
    // Against every subset of the vertices, by the definition of a vertex cut.
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9 }),
        fc.double({ min: 0.05, max: 0.7, noNaN: true }),
        fc.integer({ min: 0, max: 1e6 }),
        (n, density, seed) => {
          const given = randomCase(n, density, seed);
          const least = smallest(given);
          for (const cut of cutsOf(given)) {
            expect(cut.filter((side) => side === BETWEEN).length).toBe(least);
            for (let u = 0; u < n; u++) {
              if (given.entry[u]) expect(cut[u]).not.toBe(AFTER);
              if (given.exit[u]) expect(cut[u]).not.toBe(BEFORE);
              for (let v = 0; v < n; v++) if (given.adjacent[u][v] && cut[u] === BEFORE) expect(cut[v]).not.toBe(AFTER);
            }
          }
        },
      ),
      { numRuns: 300, seed: 11 },
    );
  });

  it('cuts as many vertices as there are disjoint paths', () => {
    // Menger 1927, against a maximum flow with every vertex split into two joined by capacity one.
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 40 }),
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.integer({ min: 0, max: 1e6 }),
        (n, degree, seed) => {
          const given = randomCase(n, degree / n, seed);
          const paths = disjointPaths(given);
          for (const cut of cutsOf(given)) expect(cut.filter((side) => side === BETWEEN).length).toBe(paths);
        },
      ),
      { numRuns: 500, seed: 12 },
    );
  });

  it('takes the narrow place of a dumb-bell', () => {
    // 4 x 4 - one vertex - 4 x 4, from the left column to the right one
    const n = 33;
    const given: Case = {
      n,
      adjacent: Array.from({ length: n }, (_, u) =>
        Array.from({ length: n }, (_, v) => {
          if (u === v) return false;
          if (u === 16 || v === 16) return Math.abs(u - v) === 1;
          const [a, b] = [u < 16 ? u : u - 17, v < 16 ? v : v - 17];
          return u < 16 === v < 16 && Math.abs((a >> 2) - (b >> 2)) + Math.abs((a & 3) - (b & 3)) === 1;
        }),
      ),
      entry: Array.from({ length: n }, (_, v) => v < 4),
      exit: Array.from({ length: n }, (_, v) => v >= 29),
    };
    const [front, back] = cutsOf(given);
    expect(Array.from(front).flatMap((side, v) => (side === BETWEEN ? [v] : []))).toEqual([15]);
    expect(Array.from(back).flatMap((side, v) => (side === BETWEEN ? [v] : []))).toEqual([17]);
  });
});
