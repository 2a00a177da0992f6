import { type Advice, type FaultReport, type HeadModel, type HeadResult, modelHash } from '@flathead/solver';
import { createStore } from 'zustand/vanilla';

/** What the solver said of a head in full. */
export type FullAnswer =
  | { readonly kind: 'solved'; readonly result: HeadResult; readonly advice?: Advice }
  | { readonly kind: 'refused'; readonly fault: FaultReport };

/** Full answers by {@link answerKey}, the latest last. */
export interface AnswerState {
  readonly answers: ReadonlyMap<string, FullAnswer>;
}

/** Answers of all variants and of a comparison; each has of the order of a megabyte. */
const MOST_KEPT = 150;

export function createAnswerStore() {
  return createStore<AnswerState>()(() => ({ answers: new Map() }));
}

export type AnswerStore = ReturnType<typeof createAnswerStore>;

const keys = new WeakMap<HeadModel, string>();

/** Hash of what an answer depends on: all of the model but its name and note. */
export function answerKey(model: HeadModel): string {
  const known = keys.get(model);
  if (known !== undefined) return known;
  const { note: _, ...bare } = model;
  const key = modelHash({ ...bare, name: 'any' });
  keys.set(model, key);
  return key;
}

export function answerOf({ answers }: AnswerState, model: HeadModel): FullAnswer | null {
  return answers.get(answerKey(model)) ?? null;
}

/** Advice on a head as that for one of another name and note. */
export function adviceFor({ name, note }: HeadModel, advice: Advice): Advice {
  const moves = advice.moves.map((move) => {
    const { note: _, ...changed } = move.model;
    return { ...move, model: { ...changed, name, ...(note === undefined ? {} : { note }) } };
  });
  return { ...advice, moves };
}

/** Adds advice to the answer that is kept of the model, if it is. */
export function keepAdvice(store: AnswerStore, model: HeadModel, advice: Advice): void {
  const answer = answerOf(store.getState(), model);
  if (answer?.kind === 'solved') keepAnswer(store, model, { ...answer, advice });
}

/** Keeps an answer; the oldest gives way. */
export function keepAnswer(store: AnswerStore, model: HeadModel, answer: FullAnswer): void {
  store.setState(({ answers }) => {
    const next = new Map(answers);
    next.delete(answerKey(model));
    next.set(answerKey(model), answer);
    for (const oldest of next.keys()) if (next.size > MOST_KEPT) next.delete(oldest);
    return { answers: next };
  });
}
