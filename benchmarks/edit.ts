/*
 * Time of an edit of a rib's width on Kestrel, from the model to the live verdict of three cases, by stage; medians over
 * edits after a warm-up, one thread or more. One JSON line, ms.
 *
 *   npx esbuild benchmarks/edit.ts --bundle --platform=node --format=esm --outfile=dist/edit.mjs
 *   node --experimental-wasm-relaxed-simd dist/edit.mjs 30000 [threads]
 *
 * Not covered: the error estimate that follows when the rib is let go, drawing.
 */
import { argv, stdout } from 'node:process';
import { startNodeCrew } from '../packages/solver/node/crew.ts';
import type { HeadModel } from '../packages/solver/src/model/head-model.ts';
import { type HeadStages, releaseStages, solveHead } from '../packages/solver/src/solve-head.ts';
import { kestrelModel, sizeForDofs } from './kestrel-system.ts';

const EDITS = 25;
const WARM_UP = 10;

const size = sizeForDofs(Number(argv[2] ?? 30_000));
const threads = Number(argv[3] ?? 1);
const crew = threads > 1 ? startNodeCrew(threads - 1) : null;
const edited = (edit: number): HeadModel => {
  const { frame, ...rest } = kestrelModel;
  if (frame === undefined) throw new Error('Kestrel has a frame.');
  const ribs = (frame.ribs ?? []).map((rib, i) =>
    i === 0 ? { ...rib, width: rib.width * (1 + 0.01 * (edit % 7)) } : rib,
  );
  return { ...rest, frame: { ...frame, ribs }, mesh: { size } };
};

let stages: HeadStages | null = null;
const laps: Record<string, number>[] = [];
let dofs = 0;
let triangles = 0;
for (let edit = 0; edit < WARM_UP + EDITS; edit++) {
  const begin = performance.now();
  const run = solveHead(edited(edit), { quality: 'live', previous: stages, factor: { crew } });
  const ms = performance.now() - begin;
  if (stages !== null) releaseStages(stages, run.stages);
  stages = run.stages;
  dofs = run.result.dofs;
  triangles = run.result.mesh.region.length;
  if (edit >= WARM_UP) laps.push({ ...run.result.timings, edit: ms });
}
const median = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1];
const names = Object.keys(laps[0]).filter((name) => name !== 'total');
const ms = Object.fromEntries(names.map((name) => [name, Number(median(laps.map((lap) => lap[name])).toFixed(1))]));
stdout.write(`${JSON.stringify({ dofs, triangles, threads, ...ms })}\n`);
