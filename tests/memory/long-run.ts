import { readFileSync } from 'node:fs';
import { memoryUsage, stdout } from 'node:process';
import { type HeadModel, type HeadStages, readHeadModel, releaseStages, solveHead } from '@flathead/solver';

/*
 * A long day at the workbench: a fastener dragged for 2,000 frames, then 500 edits of a rib. One JSON line with the bytes
 * in use after collecting garbage, early and late. Run by scripts/memory.mjs with --expose-gc.
 */

const [FRAMES, EDITS] = [2000, 500];
/** Rounds before the first reading: caches and pools fill up, code is compiled. */
const [SETTLED_FRAMES, SETTLED_EDITS] = [200, 50];

const path = process.argv[2];
const kestrel = readHeadModel(readFileSync(path, 'utf8'));

const dragged = (frame: number): HeadModel => ({
  ...kestrel,
  fasteners: kestrel.fasteners.map((fastener, i) =>
    i === 0 ? { ...fastener, at: [-40 + Math.cos(frame / 9), 26 + Math.sin(frame / 9)] } : fastener,
  ),
});
const edited = (edit: number): HeadModel => {
  const frame = kestrel.frame!;
  const ribs = frame.ribs!.map((rib) => ({ ...rib, width: rib.width * (1 + 0.01 * (edit % 7)) }));
  return { ...kestrel, frame: { ...frame, ribs } };
};

/** Bytes in use: objects, and what they hold outside of the heap, compiled memories included. */
function inUse(): number {
  if (globalThis.gc === undefined) throw new Error('run with --expose-gc');
  globalThis.gc();
  globalThis.gc();
  const { heapUsed, external } = memoryUsage();
  return heapUsed + external;
}

function run(model: (round: number) => HeadModel, rounds: number, settled: number) {
  let stages: HeadStages | null = null;
  let early = 0;
  for (let round = 0; round < rounds; round++) {
    const next: HeadStages = solveHead(model(round), { quality: 'live', previous: stages }).stages;
    if (stages !== null) releaseStages(stages, next);
    stages = next;
    if (round + 1 === settled) early = inUse();
  }
  const late = inUse();
  return { rounds, early, late, growth: late / early - 1 };
}

const drag = run(dragged, FRAMES, SETTLED_FRAMES);
const edits = run(edited, EDITS, SETTLED_EDITS);
stdout.write(`${JSON.stringify({ drag, edits })}\n`);
