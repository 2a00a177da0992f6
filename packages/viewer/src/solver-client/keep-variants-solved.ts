import type { AnswerStore } from '../state/answer-store.ts';
import type { HeadStore } from '../state/head-store.ts';
import type { PointerStore } from '../state/pointer-store.ts';
import type { RunStore } from '../state/run-store.ts';
import { type Background, createBackground } from './background.ts';
import type { Connect } from './runner.ts';

/** Quiet of the bench before the background begins, ms. */
const QUIET = 600;

/** Solves the variants that have no answer, in the background, while the bench needs no solver. */
export function keepVariantsSolved(
  head: HeadStore,
  pointer: PointerStore,
  run: RunStore,
  answers: AnswerStore,
  connect: Connect,
): Background {
  const background = createBackground(connect, answers);
  background.allow(false);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const yieldToBench = (): void => {
    clearTimeout(timer);
    const { solving, full, refusal } = run.getState();
    const { model } = head.getState();
    const settled = full?.model === model || refusal?.model === model;
    if (solving === null && pointer.getState().dragged === null && settled)
      timer = setTimeout(() => background.allow(true), QUIET);
    else background.allow(false);
  };
  /** The variant on the bench is left to the bench. */
  const want = (): void => {
    const { variants, bench } = head.getState().book;
    background.want(
      'shelf',
      variants.filter(({ id }) => id !== bench).map(({ model }) => model),
    );
  };
  run.subscribe(yieldToBench);
  pointer.subscribe(({ dragged }, before) => {
    if (dragged !== before.dragged) yieldToBench();
  });
  head.subscribe(({ book }, before) => {
    yieldToBench();
    if (book.variants.length !== before.book.variants.length || book.bench !== before.book.bench) want();
  });
  want();
  yieldToBench();
  return background;
}
