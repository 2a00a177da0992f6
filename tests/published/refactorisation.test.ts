import type { HeadModel } from '@flathead/solver';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { BlockMatrix } from '../../packages/solver/src/linear-algebra/block-matrix.ts';
import { compileHead } from '../../packages/solver/src/model/compile.ts';
import { advance, type PlateStages } from '../../packages/solver/src/structure/stages.ts';
import { uniform } from './random.ts';

const PITCH = [9, 10] as const;
const FIELD = 4;
const LARGEST_BEARING = 5;

/** Three to eight fasteners anywhere on the body beside the sites, no two close together, the first three on no line. */
function randomFasteners(
  pick: ReturnType<typeof uniform>,
  [width, height]: readonly [number, number],
  sites: readonly [columns: number, rows: number],
  theory: 'thin' | 'shear',
) {
  const count = Math.floor(pick(3, 9));
  const places: [number, number][] = [];
  // Distance from the nearest site centre along an axis.
  const fromSite = (at: number, axis: 0 | 1): number =>
    Math.min(
      ...Array.from({ length: sites[axis] }, (_, i) => Math.abs(at - (i - (sites[axis] - 1) / 2) * PITCH[axis])),
    );
  while (places.length < count) {
    const at: [number, number] = [pick(-0.45, 0.45) * width, pick(-0.42, 0.42) * height];
    const clear = (FIELD + LARGEST_BEARING) / 2;
    if (fromSite(at[0], 0) < clear && fromSite(at[1], 1) < clear) continue;
    const apart = places.length === 1 ? 0.4 * width : LARGEST_BEARING;
    if (places.some((other) => Math.hypot(other[0] - at[0], other[1] - at[1]) < apart)) continue;
    if (places.length === 2) {
      const [[x0, y0], [x1, y1]] = places;
      const twiceArea = (x1 - x0) * (at[1] - y0) - (at[0] - x0) * (y1 - y0);
      if (Math.abs(twiceArea) < 0.1 * width * height) continue;
    }
    places.push(at);
  }
  return places.map((at, i) => ({
    name: `F${i + 1}`,
    at,
    bearing: theory === 'thin' && pick(0, 1) < 0.5 ? 0 : pick(2, LARGEST_BEARING),
    stiffness: pick(0, 1) < 0.4 ? ('rigid' as const) : 10 ** pick(3, 6),
  }));
}

function randomHead(seed: number): { before: HeadModel; after: HeadModel } {
  const pick = uniform(seed);
  const body: [number, number] = [pick(50, 80), pick(34, 48)];
  const sites = [2 + (seed % 3), 1 + (seed % 2)] as const;
  const theory = seed % 2 === 0 ? 'shear' : 'thin';
  const head: HeadModel = {
    flathead: 1,
    name: `head ${seed}`,
    body: { outline: { rectangle: body }, thickness: pick(3, 8), material: 'ceramic' },
    sites: {
      columns: sites[0],
      rows: sites[1],
      pitch: [...PITCH],
      probes: { count: 300, field: [FIELD, FIELD], preload: pick(0.02, 0.06), touchdown: 0.1 },
    },
    fasteners: randomFasteners(pick, body, sites, theory),
    cases: [{ name: 'mounted' }],
    limits: { bow: 0.03 },
    theory,
    mesh: { size: 6 },
    materials: { ceramic: { E: pick(6e4, 4e5), nu: pick(0.18, 0.32) } },
  };
  return { before: head, after: { ...head, fasteners: randomFasteners(pick, body, sites, theory) } };
}

function solveFrom(previous: PlateStages | null, model: HeadModel): PlateStages {
  const { problems, siteArea } = compileHead(model);
  return advance(previous, {
    problems: problems.map((problem) => ({ ...problem, theory: model.theory ?? 'shear' })),
    areas: siteArea,
    coarsening: 1,
    keepMesh: true,
  });
}

function denseOf({ n, start, column, value }: BlockMatrix): Matrix {
  const A = Matrix.zeros(3 * n, 3 * n);
  for (let i = 0; i < n; i++)
    for (let k = start[i]; k < start[i + 1]; k++)
      for (let a = 0; a < 3; a++)
        for (let b = 0; b < 3; b++) {
          A.set(3 * i + a, 3 * column[k] + b, value[9 * k + 3 * a + b]);
          A.set(3 * column[k] + b, 3 * i + a, value[9 * k + 3 * a + b]);
        }
  return A;
}

/**
 * Deflection and reactions with the supports built in: `[K, C^T; C, -1/k] [u; -r] = [f; 0]` as one dense matrix with
 * a factorisation of its own. Shares K, f and the rows C with the route under test, and nothing of its algebra.
 */
function builtIn({ structure, supports, loadings }: PlateStages) {
  const K = structure.stiffness;
  const held = [...supports.values()].map(({ support }) => support);
  const n = 3 * K.n;
  const A = Matrix.zeros(n + held.length, n + held.length);
  A.setSubMatrix(denseOf(K), 0, 0);
  // Multipliers in units of a stiffness, so that pivoting meets numbers of one size.
  const unit = K.value[0];
  held.forEach(({ row, stiffness }, i) => {
    row.dof.forEach((dof, k) => {
      A.set(n + i, dof, unit * row.value[k]);
      A.set(dof, n + i, unit * row.value[k]);
    });
    if (stiffness !== null) A.set(n + i, n + i, -(unit * unit) / stiffness);
  });
  const [{ f }] = [...loadings.values()];
  const x = solve(A, Matrix.columnVector([...f, ...held.map(() => 0)])).to1DArray();
  return { u: x.slice(0, n), reactions: x.slice(n).map((multiplier) => -unit * multiplier) };
}

const largest = (values: Iterable<number>): number => Math.max(...[...values].map(Math.abs));
const difference = (a: readonly number[], b: ArrayLike<number>): number => largest(a.map((value, i) => value - b[i]));

describe('moving supports against refactorisation with the supports built in', () => {
  it.each(Array.from({ length: 20 }, (_, seed) => seed))(
    'agree to 1e-8 after every fastener has moved, seed %i',
    (seed) => {
      const { before, after } = randomHead(seed);
      const first = solveFrom(null, before);
      const moved = solveFrom(first, after);
      expect(moved.structure).toBe(first.structure);

      const [{ u, reactions, load, residual }] = moved.cases;
      const expected = builtIn(moved);
      for (const dof of [0, 1, 2]) {
        const share = expected.u.filter((_, i) => i % 3 === dof);
        expect(
          difference(
            share,
            u.filter((_, i) => i % 3 === dof),
          ) / largest(share),
        ).toBeLessThan(1e-8);
      }
      expect(difference(expected.reactions, reactions) / largest(expected.reactions)).toBeLessThan(1e-8);
      expect(Math.abs(reactions.reduce((sum, r) => sum + r, load)) / load).toBeLessThan(1e-9);
      expect(residual).toBeLessThan(1e-12);
    },
  );
});
