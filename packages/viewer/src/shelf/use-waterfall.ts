import type { CriterionVerdict, HeadModel } from '@flathead/solver';
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { answerOf } from '../state/answer-store.ts';
import type { Change } from '../state/difference/change.ts';
import { differences } from '../state/difference/differences.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import { chainOf, type Fall, levelDecimals, waterfall } from '../state/waterfall.ts';

const OWNER = 'waterfall';
type Kind = CriterionVerdict['criterion'];

/** The changes between two heads in an order of choice, and what each adds to a criterion as far as it is solved. */
export function useWaterfall(from: HeadModel, to: HeadModel, kind: Kind, scale: number) {
  const { answers, background } = useWorkbench();
  const changes = useMemo(() => differences(from, to), [from, to]);
  const [order, setOrder] = useState<readonly string[]>([]);
  const [stopped, setStopped] = useState(false);
  const ordered = useMemo(() => inOrder(changes, order), [changes, order]);
  const chain = useMemo(() => chainOf(from, to, ordered), [from, to, ordered]);
  useEffect(() => {
    background.want(OWNER, stopped ? [] : chain);
    return () => background.want(OWNER, []);
  }, [background, chain, stopped]);
  const state = useStore(answers);
  const known = chain.map((model) => answerOf(state, model));
  const levels = known.map((answer) => {
    if (answer?.kind !== 'solved') return null;
    const verdict = answer.result.verdict.criteria.find(({ criterion }) => criterion === kind);
    return verdict === undefined ? null : verdict.value * scale;
  });
  const decimals = levelDecimals(levels.filter((level) => level !== null));
  const solved = known.filter((answer) => answer !== null).length;
  const falls: readonly Fall[] = solved === chain.length ? waterfall(ordered, levels, decimals) : [];
  return {
    ordered,
    falls,
    decimals,
    solved,
    total: chain.length,
    stopped,
    setStopped,
    move(id: string, by: number): void {
      const ids = ordered.map((change) => change.id);
      const at = ids.indexOf(id);
      setOrder(ids.toSpliced(at, 1).toSpliced(Math.max(0, at + by), 0, id));
    },
  };
}

function inOrder(changes: readonly Change[], order: readonly string[]): readonly Change[] {
  const place = ({ id }: Change): number => (order.includes(id) ? order.indexOf(id) : order.length);
  return changes.toSorted((a, b) => place(a) - place(b));
}
