import type { StudyName } from '@flathead/solver';
import { createStore } from 'zustand/vanilla';

/** What was typed into the fields of a study, by the name of the field. */
export type Setup = Readonly<Record<string, string>>;

export interface SetupState {
  /** The study that is looked at. */
  readonly study: StudyName;
  /** By study and name of the head: fields that were changed. */
  readonly typed: Readonly<Record<string, Setup>>;
}

/** What is set up on this visit. */
export const setupStore = createStore<SetupState>()(() => ({ study: 'placement', typed: {} }));

const NOTHING: Setup = {};

export function typedOf({ typed }: SetupState, study: StudyName, head: string): Setup {
  return typed[`${study} ${head}`] ?? NOTHING;
}

export function type(study: StudyName, head: string, field: string, text: string): void {
  setupStore.setState((state) => ({
    typed: { ...state.typed, [`${study} ${head}`]: { ...typedOf(state, study, head), [field]: text } },
  }));
}
