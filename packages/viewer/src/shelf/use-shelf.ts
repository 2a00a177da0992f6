import type { HeadModel, Verdict } from '@flathead/solver';
import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { answerOf, type FullAnswer } from '../state/answer-store.ts';
import type { Change } from '../state/difference/change.ts';
import { differences } from '../state/difference/differences.ts';
import { useRun, useView, useWorkbench } from '../state/use-workbench.ts';
import { referenceOf, type Variant, type Workbook } from '../state/workbook.ts';

export function useBook(): Workbook {
  return useStore(useWorkbench().head, ({ book }) => book);
}

/** What a variant is compared with on the shelf; `null` = nothing. */
export function useReference(variant: Variant): Variant | null {
  const book = useBook();
  return referenceOf(
    book,
    variant,
    useView(({ reference }) => reference),
  );
}

/** Whether another variant is compared with this one. */
export function useIsReference({ id }: Variant): boolean {
  const book = useBook();
  const chosen = useView(({ reference }) => reference);
  return book.variants.some((other) => referenceOf(book, other, chosen)?.id === id);
}

/** The two variants under comparison, the reference first; `null` while there is but one. */
export function useCompared(): readonly [Variant, Variant] | null {
  const book = useBook();
  const chosen = useView(({ reference }) => reference);
  const onBench = book.variants.find(({ id }) => id === book.bench)!;
  const reference = referenceOf(book, onBench, chosen);
  if (reference !== null) return [reference, onBench];
  const others = book.variants.filter(({ id }) => id !== onBench.id);
  const follower = others.find((variant) => referenceOf(book, variant, chosen)?.id === onBench.id);
  if (follower !== undefined) return [onBench, follower];
  // A head of its own, with the first other one on the shelf.
  return others.length === 0 ? null : [others[0], onBench];
}

/** The full answer of a variant, if there is one yet. */
export function useFullAnswer(model: HeadModel): FullAnswer | null {
  return useStore(useWorkbench().answers, (state) => answerOf(state, model));
}

/**
 * The newest verdict of a variant: live while it is edited on the bench, and the one before an edit until that is judged,
 * so that the shelf stays as it is while something is dragged. `null` before the first, and where it is refused.
 */
export function useNewestVerdict(model: HeadModel): { readonly verdict: Verdict; readonly stale: boolean } | null {
  const answer = useFullAnswer(model);
  const live = useRun(({ solved }) => (solved?.model === model ? solved.result.verdict : null));
  const verdict = live ?? (answer?.kind === 'solved' ? answer.result.verdict : null);
  const [last, setLast] = useState<Verdict | null>(null);
  const newest = answer?.kind === 'refused' ? null : (verdict ?? last);
  if (newest !== last) setLast(newest);
  return newest && { verdict: newest, stale: verdict === null };
}

export function useDifferences(from: HeadModel, to: HeadModel): readonly Change[] {
  return useMemo(() => differences(from, to), [from, to]);
}
