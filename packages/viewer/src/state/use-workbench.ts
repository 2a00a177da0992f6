import type { FaultReport, HeadModel } from '@flathead/solver';
import { createContext, useCallback, useContext, useSyncExternalStore } from 'react';
import { useStore } from 'zustand';
import { type DraftState, firstDraft, hasDrafts } from './draft-store.ts';
import type { PointerState } from './pointer-store.ts';
import { type RunState, type Staleness, showsEarlier, stalenessOf } from './run-store.ts';
import type { ViewState } from './view-store.ts';
import type { Workbench } from './workbench.ts';

export const WorkbenchContext = createContext<Workbench | null>(null);

export function useWorkbench(): Workbench {
  const workbench = useContext(WorkbenchContext);
  if (workbench === null) throw new Error('No workbench around this component.');
  return workbench;
}

export function useModel<T>(select: (model: HeadModel) => T): T {
  return useStore(useWorkbench().head, ({ model }) => select(model));
}

export function useRun<T>(select: (run: RunState) => T): T {
  return useStore(useWorkbench().run, select);
}

export function useView<T>(select: (view: ViewState) => T): T {
  return useStore(useWorkbench().view, select);
}

export function usePointer<T>(select: (pointer: PointerState) => T): T {
  return useStore(useWorkbench().pointer, select);
}

/**
 * What follows from the model, its answer and the texts that did not reach it. A model that changes with every move of a
 * drag renders nothing by itself.
 */
function useTogether<T>(select: (model: HeadModel, run: RunState, drafts: DraftState) => T): T {
  const { head, run, drafts } = useWorkbench();
  const subscribe = useCallback(
    (changed: () => void) => {
      const stops = [head, run, drafts].map((store) => store.subscribe(changed));
      return () => {
        for (const stop of stops) stop();
      };
    },
    [head, run, drafts],
  );
  return useSyncExternalStore(subscribe, () => select(head.getState().model, run.getState(), drafts.getState()));
}

/** Whether and why the shown answer is not that of the shown model. */
export function useStaleness(): Staleness {
  return useTogether((model, run, drafts) => stalenessOf(run, model, hasDrafts(drafts, model)));
}

/** Path of a field whose text did not reach the model. */
export function useFirstDraft(): string | null {
  return useTogether((model, _run, drafts) => firstDraft(drafts, model));
}

/** Whether the model was refused and the numbers shown are those of an earlier one. */
export function useEarlier(): boolean {
  return useTogether((model, run) => showsEarlier(run, model));
}

/** The solver's refusal of the present model, if any. */
export function useRefusal(): FaultReport | null {
  return useTogether((model, { refusal }) => (refusal?.model === model ? refusal.fault : null));
}
