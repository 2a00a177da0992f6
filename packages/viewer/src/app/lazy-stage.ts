import { type ComponentType, lazy } from 'react';
import { webglRenderer } from '../scene/webgl.ts';
import type { RunStore } from '../state/run-store.ts';

/** Longest the stage waits for an answer to draw, ms. */
const PATIENCE = 6000;

/**
 * The stage, fetched at once but begun only when there is an answer on the page: starting a renderer holds the page up,
 * for seconds where it draws in software, and the verdict is to come first. Without WebGL the head is shown from above.
 */
export function lazyStage(run: RunStore): ComponentType {
  return lazy(async () => {
    if (webglRenderer() === null) return { default: (await import('../scene/PlanStage.tsx')).PlanStage };
    const fetched = import('../scene/Stage.tsx');
    await answered(run);
    await painted();
    const { Stage } = await fetched;
    return { default: Stage };
  });
}

function answered(run: RunStore): Promise<void> {
  return new Promise((resolve) => {
    const stop = run.subscribe(({ solved, refusal }) => {
      if (solved !== null || refusal !== null) done();
    });
    const done = (): void => {
      stop();
      clearTimeout(timer);
      resolve();
    };
    const timer = setTimeout(done, PATIENCE);
  });
}

/** Resolves once what React has just put on the page has been drawn; hidden pages draw nothing and do not wait. */
function painted(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 200);
    requestAnimationFrame(() => requestAnimationFrame(() => resolve()));
  });
}
