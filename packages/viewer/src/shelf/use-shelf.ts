import type { HeadModel, HeadResult } from '@flathead/solver';
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { answerOf, type FullAnswer } from '../state/answer-store.ts';
import type { Change } from '../state/difference/change.ts';
import { differences } from '../state/difference/differences.ts';
import { useRun, useView, useWorkbench } from '../state/use-workbench.ts';
import type { Variant, Workbook } from '../state/workbook.ts';

export function useBook(): Workbook {
  return useStore(useWorkbench().head, ({ book }) => book);
}

/** The variant that the others are compared with. */
export function useReference(): Variant {
  const { variants } = useBook();
  const chosen = useView(({ reference }) => reference);
  return variants.find(({ id }) => id === chosen) ?? variants[0];
}

/** The two variants under comparison, the reference first; `null` while there is but one. */
export function useCompared(): readonly [Variant, Variant] | null {
  const { variants, bench } = useBook();
  const reference = useReference();
  const onBench = variants.find(({ id }) => id === bench)!;
  const other = onBench === reference ? variants.find((variant) => variant !== reference) : onBench;
  return other === undefined ? null : [reference, other];
}

/** The full answer of a variant, if there is one yet. */
export function useFullAnswer(model: HeadModel): FullAnswer | null {
  return useStore(useWorkbench().answers, (state) => answerOf(state, model));
}

/** The newest result of a variant: live while it is edited on the bench. */
export function useNewestResult(model: HeadModel): HeadResult | null {
  const answer = useFullAnswer(model);
  const solved = useRun((run) => run.solved);
  if (solved?.model === model) return solved.result;
  return answer?.kind === 'solved' ? answer.result : null;
}

export function useDifferences(from: HeadModel, to: HeadModel): readonly Change[] {
  return useMemo(() => differences(from, to), [from, to]);
}
