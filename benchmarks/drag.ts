/*
 * Time of one drag frame: a fastener of Kestrel at a new place, to reactions and the whole deflection field, and to the
 * verdict. Medians after a warm-up, one thread.
 *
 *   npx esbuild benchmarks/drag.ts --bundle --platform=node --format=esm --outfile=dist/drag.mjs && node dist/drag.mjs
 *
 * Not covered: browsers, drawing, moving several fasteners at once, more load cases than Kestrel's three.
 */
import { argv, stdout } from 'node:process';
import { startNodeCrew } from '../packages/solver/node/crew.ts';
import type { HeadModel } from '../packages/solver/src/model/head-model.ts';
import { type HeadStages, solveHead } from '../packages/solver/src/solve-head.ts';
import { advance, type PlateStages } from '../packages/solver/src/structure/stages.ts';
import { kestrel, kestrelModel, sizeForDofs } from './kestrel-system.ts';

const FRAMES = 120;
const WARM_UP = 30;
const threads = Number(argv[3] ?? 1);
const factor = { crew: threads > 1 ? startNodeCrew(threads - 1) : null };

for (const kdof of (argv[2] ?? '30,100').split(',').map(Number)) {
  const size = sizeForDofs(1000 * kdof);
  const { problem, areas } = kestrel(size);
  const place = (frame: number): [number, number] => [-40 + Math.cos(frame / 9), 26 + Math.sin(frame / 9)];

  let stages: PlateStages = advance(null, { problems: [problem], areas, coarsening: 1, keepMesh: true, factor });
  const field = medianTime((frame) => {
    const supports = problem.supports!.map((support, i) => (i === 0 ? { ...support, at: place(frame) } : support));
    stages = advance(stages, {
      problems: [{ ...problem, supports }],
      areas,
      coarsening: 1,
      keepMesh: true,
      withoutResidual: true,
      factor,
    });
  });

  const model: HeadModel = { ...kestrelModel, mesh: { size } };
  let head: HeadStages = solveHead(model, { quality: 'live', factor }).stages;
  const verdict = medianTime((frame) => {
    const fasteners = model.fasteners.map((fastener, i) => (i === 0 ? { ...fastener, at: place(frame) } : fastener));
    head = solveHead({ ...model, fasteners }, { quality: 'live', previous: head, factor }).stages;
  });
  const dofs = 3 * stages.meshed.mesh.x.length;
  stdout.write(
    `${dofs} dofs: one case to its field ${field.toFixed(2)} ms, three cases to the verdict ${verdict.toFixed(2)} ms\n`,
  );
}

function medianTime(run: (frame: number) => void): number {
  const times: number[] = [];
  for (let frame = 0; frame < WARM_UP + FRAMES; frame++) {
    const begin = performance.now();
    run(frame);
    if (frame >= WARM_UP) times.push(performance.now() - begin);
  }
  return times.sort((a, b) => a - b)[FRAMES >> 1];
}
