import type { HeadModel } from '@flathead/solver';
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import { hasDrafts } from './draft-store.ts';
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

/** Whether and why the shown answer is not that of the shown model. */
export function useStaleness(): Staleness {
  const { drafts } = useWorkbench();
  const model = useModel((model) => model);
  const refused = useStore(drafts, (state) => hasDrafts(state, model));
  return useRun((run) => stalenessOf(run, model, refused));
}

/** Whether the model was refused and the numbers shown are those of an earlier one. */
export function useEarlier(): boolean {
  const model = useModel((model) => model);
  return useRun((run) => showsEarlier(run, model));
}

/** The solver's refusal of the present model, if any. */
export function useRefusal() {
  const model = useModel((model) => model);
  return useRun(({ refusal }) => (refusal?.model === model ? refusal.fault : null));
}
