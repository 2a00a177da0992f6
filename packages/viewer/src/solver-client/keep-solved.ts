import type { HeadModel } from '@flathead/solver';
import {
  type AnswerStore,
  adviceFor,
  answerOf,
  createAnswerStore,
  keepAdvice,
  keepAnswer,
} from '../state/answer-store.ts';
import type { HeadStore } from '../state/head-store.ts';
import { withKnownMesh } from '../state/known-mesh.ts';
import type { PointerStore } from '../state/pointer-store.ts';
import type { RunStore } from '../state/run-store.ts';
import { wantsAdvice } from '../state/shown-advice.ts';
import { type Connect, createRunner, type Runner } from './runner.ts';

/**
 * Solves the model of the page now and after each change: live at once, in full when nothing is dragged any more.
 *
 * A head whose full answer is known, such as a variant that comes back on the bench, shows it at once. It is solved again
 * only where advice is wanted and not yet known: the solver advises on its last answer alone.
 *
 * @param onRestart told when the solver was lost and started again
 * @param answers where full answers are kept
 */
export function keepSolved(
  head: HeadStore,
  pointer: PointerStore,
  run: RunStore,
  connect: Connect,
  onRestart: (reason: string) => void,
  answers: AnswerStore = createAnswerStore(),
): Runner {
  const refine = (): void => {
    const { model } = head.getState();
    const { solved } = run.getState();
    if (solved?.model === model && solved.quality === 'live' && pointer.getState().dragged === null)
      runner.solve(model, 'full');
  };
  const runner = createRunner(connect, {
    solving: (model) => run.setState({ solving: model }),
    solved: (model, { result, quality }) => {
      const known = withKnownMesh(result, run.getState().solved?.result);
      const solved = { model, result: known, quality };
      run.setState({ solved, refusal: null, ...(quality === 'full' ? { full: solved } : {}) });
      if (quality === 'full') keepAnswer(answers, model, { kind: 'solved', result: known });
      refine();
    },
    advised: (model, advice) => {
      run.setState({ advice: { model, advice } });
      if (advice !== null) keepAdvice(answers, model, advice);
    },
    refused: (model, fault) => {
      run.setState({ refusal: { model, fault } });
      if (fault.code !== 'CANCELLED') keepAnswer(answers, model, { kind: 'refused', fault });
    },
    restarted: (reason) => {
      run.setState(({ restarts }) => ({ restarts: restarts + 1 }));
      onRestart(reason);
    },
  });
  const solve = (model: HeadModel): void => {
    // A drag comes by no known head twice, and is not to wait for a hash.
    const known = pointer.getState().dragged === null ? answerOf(answers.getState(), model) : null;
    if (known?.kind !== 'solved') {
      runner.solve(model, 'live');
      return;
    }
    runner.forget();
    const result = { ...withKnownMesh(known.result, run.getState().solved?.result), name: model.name };
    const solved = { model, result, quality: 'full' } as const;
    const advice = known.advice === undefined ? null : { model, advice: adviceFor(model, known.advice) };
    run.setState({ solved, full: solved, refusal: null, advice });
    if (advice === null && wantsAdvice(result)) runner.solve(model, 'full');
  };
  head.subscribe(({ model }, before) => {
    if (model !== before.model) solve(model);
  });
  pointer.subscribe(({ dragged }, before) => {
    if (dragged === null && before.dragged !== null) refine();
  });
  runner.solve(head.getState().model, 'live');
  return runner;
}
