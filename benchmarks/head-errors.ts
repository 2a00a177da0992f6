/*
 * Stated errors of made-up heads beside the truth as a mesh three times as fine has it. A line for each value that is off
 * by more than is stated, then how many of them there were.
 *
 *   npx esbuild benchmarks/head-errors.ts --bundle --platform=node --format=esm --alias:@flathead/solver=./packages/solver/src/index.ts --outfile=dist/head-errors.mjs
 *   node dist/head-errors.mjs 3001 4200
 *
 * Not covered: stress; heads that the generator of tests/fuzz does not draw.
 */
import { argv, stdout } from 'node:process';
import { type HeadModel, solveHead } from '@flathead/solver';
import { Fault } from '../packages/solver/src/fault/fault.ts';
import { readHeadModel } from '../packages/solver/src/model/read.ts';
import { releaseStages } from '../packages/solver/src/solve-head.ts';
import { caseOfSeed } from '../tests/fuzz/case-of-seed.ts';

const FINER = 3;
const [from, to] = argv.slice(2).map(Number);
let [values, above, twice] = [0, 0, 0];
for (let seed = from; seed < to; seed++) {
  const { kind, of, text } = caseOfSeed(seed);
  if (kind !== 'valid' || of !== 'head') continue;
  try {
    compare(seed, readHeadModel(text));
  } catch (thrown) {
    if (!(thrown instanceof Fault)) throw thrown;
  }
}
stdout.write(`${JSON.stringify({ values, above, twice })}\n`);

function compare(seed: number, { mesh: _, ...drawn }: HeadModel): void {
  const model = { ...drawn, limits: { ...drawn.limits, flatness: drawn.limits.flatness ?? drawn.limits.bow } };
  const { result, stages } = solveHead(model);
  releaseStages(stages, null);
  const finer = solveHead({ ...model, mesh: { size: stages.plan.meshSize / FINER } }, { quality: 'live' });
  releaseStages(finer.stages, null);
  for (const { criterion, value, error } of result.verdict.criteria) {
    const truth = finer.result.verdict.criteria.find((other) => other.criterion === criterion);
    if (truth === undefined || error === null) continue;
    const ratio = Math.abs(value - truth.value) / error;
    values++;
    if (ratio > 2) twice++;
    if (ratio <= 1) continue;
    above++;
    stdout.write(`${JSON.stringify({ seed, criterion, value, finer: truth.value, error, ratio })}\n`);
  }
}
