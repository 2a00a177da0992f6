import type { FactorOptions } from '../packages/solver/src/linear-algebra/factor.ts';
import type { HeadModel } from '../packages/solver/src/model/head-model.ts';
import { type HeadStages, solveHead } from '../packages/solver/src/solve-head.ts';
import { advance, type PlateRequest, type PlateStages } from '../packages/solver/src/structure/stages.ts';
import { kestrel, kestrelModel, sizeForDofs } from './kestrel-system.ts';

const FRAMES = 120;
const WARM_UP = 30;

export interface DragTimes {
  readonly dofs: number;
  /** One load case, from a new support position to the whole deflection field, ms. */
  readonly field: number;
  /** Three load cases, from a new fastener position in the model to the verdict, ms. */
  readonly verdict: number;
}

/** Median times of a frame while a fastener of Kestrel is dragged in circles. */
export function dragTimes(dofs: number, factor: FactorOptions): DragTimes {
  const size = sizeForDofs(dofs);
  const { problem, areas } = kestrel(size);
  const place = (frame: number): [number, number] => [-40 + Math.cos(frame / 9), 26 + Math.sin(frame / 9)];
  const request = { areas, coarsening: 1, keepMesh: true, withoutResidual: true, factor };
  const after = (before: PlateStages | null, problems: PlateRequest['problems']) =>
    advance(before, { ...request, problems });

  let stages = after(null, [problem]);
  const field = medianTime((frame) => {
    const supports = problem.supports!.map((support, i) => (i === 0 ? { ...support, at: place(frame) } : support));
    stages = after(stages, [{ ...problem, supports }]);
  });

  const model: HeadModel = { ...kestrelModel, mesh: { size } };
  let head: HeadStages = solveHead(model, { quality: 'live', factor }).stages;
  const verdict = medianTime((frame) => {
    const fasteners = model.fasteners.map((fastener, i) => (i === 0 ? { ...fastener, at: place(frame) } : fastener));
    head = solveHead({ ...model, fasteners }, { quality: 'live', previous: head, factor }).stages;
  });
  return { dofs: 3 * stages.meshed.mesh.x.length, field, verdict };
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
