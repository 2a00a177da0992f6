import type { VerificationCase, VerificationRow } from '@flathead/solver/verification';
import { createStore } from 'zustand/vanilla';
import type { ChecksAnswer, ChecksRequest } from './protocol.ts';

/** The worker that holds the book, as far as it is used. */
export interface BookWorker {
  postMessage(request: ChecksRequest): void;
  terminate(): void;
}

/** Starts one. @param hear told what it answers @param lost told when it dies */
export type StartBook = (hear: (answer: ChecksAnswer) => void, lost: (reason: string) => void) => BookWorker;

export interface ChecksState {
  /** `null` until the book is there. */
  readonly cases: readonly VerificationCase[] | null;
  /** By the index of the case: what was run on this visit. */
  readonly rows: ReadonlyMap<number, VerificationRow>;
  /** What is being run; `all` = every topic. */
  readonly running: string | null;
  /** Cases of the present run that are done, of how many. */
  readonly done: number;
  readonly total: number;
  /** Why the last run ended early. */
  readonly trouble: string | null;
}

const ALL = 'all';

/** The cases of the book and what this visit has run of them. Runs go on while other pages are open. */
export function createCheckRuns(start: StartBook) {
  const store = createStore<ChecksState>()(() => ({
    cases: null,
    rows: new Map(),
    running: null,
    done: 0,
    total: 0,
    trouble: null,
  }));
  let worker: BookWorker | null = null;

  const hear = (answer: ChecksAnswer): void => {
    if (answer.kind === 'book') store.setState({ cases: answer.cases });
    if (answer.kind === 'row')
      store.setState(({ rows, done }) => ({ rows: new Map(rows).set(answer.row.index, answer.row), done: done + 1 }));
    if (answer.kind === 'done') store.setState({ running: null });
    if (answer.kind === 'trouble') store.setState({ running: null, trouble: answer.message });
  };
  const lost = (reason: string): void => {
    worker = null;
    store.setState({ running: null, trouble: `The checks ended unexpectedly (${reason}). Run them again.` });
  };
  const open = (): BookWorker => {
    worker ??= start(hear, lost);
    return worker;
  };

  return {
    store,
    /** Fetches the book. */
    open: (): void => void open(),
    /** Runs a topic, or all; what was known of its cases is forgotten first. */
    run(topic: string | null): void {
      if (store.getState().running !== null) return;
      store.setState(({ cases, rows }) => {
        const asked = (cases ?? []).filter((each) => topic === null || each.topic === topic);
        const kept = new Map(rows);
        for (const { index } of asked) kept.delete(index);
        return { rows: kept, running: topic ?? ALL, done: 0, total: asked.length, trouble: null };
      });
      open().postMessage({ topic });
    },
    /** Ends a run where it is; what is solved stays. A solve hears nothing, so its worker ends with it. */
    stop(): void {
      worker?.terminate();
      worker = null;
      store.setState({ running: null });
    },
  };
}

export type CheckRuns = ReturnType<typeof createCheckRuns>;
