import type { HeadStore } from '../state/head-store.ts';
import { withKnownMesh } from '../state/known-mesh.ts';
import type { PointerStore } from '../state/pointer-store.ts';
import type { RunStore } from '../state/run-store.ts';
import { type Connect, createRunner, type Runner } from './runner.ts';

/**
 * Solves the model of the page now and after each change: live at once, in full when nothing is dragged any more.
 *
 * @param onRestart told when the solver was lost and started again
 */
export function keepSolved(
  head: HeadStore,
  pointer: PointerStore,
  run: RunStore,
  connect: Connect,
  onRestart: (reason: string) => void,
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
      refine();
    },
    advised: (model, advice) => run.setState({ advice: { model, advice } }),
    refused: (model, fault) => run.setState({ refusal: { model, fault } }),
    restarted: (reason) => {
      run.setState(({ restarts }) => ({ restarts: restarts + 1 }));
      onRestart(reason);
    },
  });
  head.subscribe(({ model }, before) => {
    if (model !== before.model) runner.solve(model, 'live');
  });
  pointer.subscribe(({ dragged }, before) => {
    if (dragged === null && before.dragged !== null) refine();
  });
  runner.solve(head.getState().model, 'live');
  return runner;
}
