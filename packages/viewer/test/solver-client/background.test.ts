import type { HeadModel, HeadResult } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { createBackground } from '../../src/solver-client/background.ts';
import { answerKey, answerOf, createAnswerStore, keepAnswer } from '../../src/state/answer-store.ts';
import { gridMesh } from '../buffers/grid-mesh.ts';
import { sampleHead } from '../state/sample-head.ts';
import { fakeSolver } from './fake-solver.ts';

const result: HeadResult = {
  name: 'sample',
  mesh: gridMesh(2, 2, 1, 1),
  sites: [],
  cases: [],
  verdict: { outcome: 'pass', criteria: [], sentence: '', remarks: [] },
  dofs: 27,
  timings: {},
};
const thick = (thickness: number): HeadModel => ({ ...sampleHead, body: { ...sampleHead.body, thickness } });

function background() {
  const solver = fakeSolver(result);
  const answers = createAnswerStore();
  const asked = () => solver.asked.map(({ model, quality }) => `${quality} ${model.body.thickness}`);
  const kind = (model: HeadModel) => answerOf(answers.getState(), model)?.kind ?? null;
  return { solver, answers, asked, kind, ...createBackground(solver.connect, answers) };
}

describe('answers', () => {
  it('are the same for heads that differ in name and note alone', () => {
    expect(answerKey({ ...sampleHead, name: 'other', note: 'n' })).toBe(answerKey(sampleHead));
    expect(answerKey(thick(4.5))).not.toBe(answerKey(sampleHead));
  });
});

describe('createBackground', () => {
  it('solves in full what is wanted and not yet answered, one at a time, the latest owner first', async () => {
    const b = background();
    keepAnswer(b.answers, thick(3), { kind: 'solved', result });
    b.want('shelf', [thick(3), thick(4), thick(5), { ...thick(4), name: 'copy' }]);
    b.want('compare', [thick(6)]);
    expect(b.asked()).toEqual(['full 4']);
    await b.solver.solved(0);
    await b.solver.solved(1);
    await b.solver.solved(2);
    expect(b.asked()).toEqual(['full 4', 'full 6', 'full 5']);
    expect([4, 5, 6].map((t) => b.kind(thick(t)))).toEqual(['solved', 'solved', 'solved']);
  });

  it('stops at once for the bench, and begins again what it was at', async () => {
    const b = background();
    b.want('shelf', [thick(4), thick(5)]);
    b.allow(false);
    expect(b.solver.closed()).toBe(1);
    await b.solver.solved(0);
    expect([b.kind(thick(4)), b.asked().length]).toEqual([null, 1]);
    b.allow(true);
    expect([b.asked().at(-1), b.solver.starts()]).toEqual(['full 4', 2]);
  });

  it('solves nothing more that is no longer wanted', async () => {
    const b = background();
    b.want('compare', [thick(4), thick(5)]);
    b.want('compare', []);
    await b.solver.solved(0);
    expect(b.asked()).toEqual(['full 4']);
  });

  it('tries again when its solver dies, and gives a head up that kills it twice', async () => {
    const b = background();
    b.want('shelf', [thick(4), thick(5)]);
    await b.solver.dies('killed');
    expect(b.asked()).toEqual(['full 4', 'full 4']);
    await b.solver.dies('killed');
    expect(b.asked()).toEqual(['full 4', 'full 4', 'full 5']);
    expect(answerOf(b.answers.getState(), thick(4))).toMatchObject({
      kind: 'refused',
      fault: { code: 'WORKER_LOST', message: expect.stringContaining('killed') },
    });
  });

  it('keeps a refusal as the answer, and goes on', async () => {
    const b = background();
    b.want('shelf', [thick(4), thick(5)]);
    await b.solver.refused(0, { code: 'MECHANISM', message: 'free', path: '', details: {} });
    expect([b.kind(thick(4)), b.asked()]).toEqual(['refused', ['full 4', 'full 5']]);
  });
});
