/*
 * Placements a second of the search for fastener positions, on one thread: six fasteners of Kestrel on a grid, random
 * placements and single moves from them, at the size asked for. One JSON line a size.
 *
 *   npx esbuild benchmarks/placement.ts --bundle --platform=node --format=esm --outfile=dist/placement.mjs
 *   node dist/placement.mjs 10,30
 *
 * `search` counts placements of a local search: each is solved for its reactions and either measured over the whole site
 * area or shown, by a point of it, to be no better than the best so far. `random` is the same against the best of random
 * placements. `measured` measures every placement in full.
 *
 * Not covered: seats and screws that act one way, probes that relax and bracketed joints, all of which take longer; the
 * flatness objective; positions off the grid; browsers.
 */
import { readFileSync } from 'node:fs';
import { argv, stdout } from 'node:process';
import { readHeadModel } from '@flathead/solver';
import { fieldJudge } from '../packages/solver/src/studies/placement/field.ts';
import { headField } from '../packages/solver/src/studies/placement/head-field.ts';
import { areApart, gridPoints, orbitsOf } from '../packages/solver/src/studies/placement/orbits.ts';
import { searchGrid } from '../packages/solver/src/studies/placement/search.ts';
import { seeded } from '../packages/solver/src/studies/placement/seeded.ts';
import { type Stand, standOnMany } from '../packages/solver/src/studies/placement/stand.ts';

const COUNT = 6;
const STEP = 3;

for (const kdof of (argv[2] ?? '10,30').split(',').map(Number)) stdout.write(`${JSON.stringify(rates(1000 * kdof))}\n`);

function rates(dofs: number) {
  const base = readHeadModel(readFileSync('models/kestrel-baseline.json', 'utf8'));
  const model = { ...base, mesh: { size: sizeFor(dofs) } };
  const started = performance.now();
  const field = headField(model, {});
  const factored = performance.now();
  const points = gridPoints(field.room, STEP, [0, 0]);
  const places = points.map((at) => field.placeAt(at));
  const stands: Stand[] = field.grounds.map((ground) => whole(standOnMany(ground, places, 0, 0)));
  const ready = performance.now();
  const judge = fieldJudge(field, stands, COUNT);
  const spacing = field.touching;
  const orbits = orbitsOf(
    points,
    points.map(() => Infinity),
    'none',
    [0, 0],
    spacing,
  );

  const searching = performance.now();
  whole(searchGrid(judge, [{ orbits, count: COUNT }], points, 0, { seed: 1, starts: 4, most: 0, spacing }));
  const searched = { asked: judge.count.asked, measured: judge.count.measured, ms: performance.now() - searching };

  const random = seeded(7);
  const draws = Array.from({ length: 40_000 }, () => draw());
  const drawing = performance.now();
  let best = Infinity;
  for (const chosen of draws) best = Math.min(best, judge.value(chosen, best));
  const drawn = performance.now() - drawing;
  const full = draws.slice(0, 300);
  const measuring = performance.now();
  for (const chosen of full) judge.value(chosen, Infinity);
  const measured = performance.now() - measuring;
  return {
    dofs: 3 * field.grounds[0].structure.mesh.x.length,
    sampleNodes: field.grounds[0].nodes.length,
    positions: points.length,
    cases: field.grounds[0].cases.length,
    factorMs: Math.round(factored - started),
    flexibilityMs: Math.round(ready - factored),
    perSecond: {
      search: Math.round((1000 * searched.asked) / searched.ms),
      random: Math.round((1000 * draws.length) / drawn),
      measured: Math.round((1000 * full.length) / measured),
    },
    shareMeasuredInSearch: searched.measured / searched.asked,
  };

  function draw(): number[] {
    for (;;) {
      const chosen = Array.from({ length: COUNT }, () => Math.floor(random() * points.length));
      if (
        new Set(chosen).size === COUNT &&
        areApart(
          chosen.map((i) => points[i]),
          spacing,
        )
      )
        return chosen;
    }
  }
}

/** Kestrel's 112 x 74 mm in elements that give so many unknowns, about. */
function sizeFor(dofs: number): number {
  return Math.sqrt((2 * 112 * 74) / (Math.sqrt(3) * (dofs / 3)));
}

function whole<T>(steps: Generator<unknown, T, void>): T {
  for (;;) {
    const next = steps.next();
    if (next.done) return next.value;
  }
}
