import type { Advice, Answer, FaultReport, HeadModel, HeadResult, SolverService } from '@flathead/solver';
import type { Connect } from '../../src/solver-client/runner.ts';

interface Asked {
  readonly run: number;
  readonly model: HeadModel;
  readonly quality: 'full' | 'live';
  readonly answer: (answer: Answer) => void;
  readonly fail: (thrown: unknown) => void;
}

/** A solver that answers when told to, and can be killed. */
export function fakeSolver(result: HeadResult) {
  const asked: Asked[] = [];
  let lose: (reason: string) => void = () => {};
  const newest = new Int32Array(new SharedArrayBuffer(4));
  let starts = 0;
  let closed = 0;
  const advices: {
    readonly run: number;
    readonly answer: (advice: Advice | null) => void;
    readonly fail: (thrown: unknown) => void;
  }[] = [];
  const service: SolverService = {
    advise: (run) => new Promise((resolve, reject) => advices.push({ run, answer: resolve, fail: reject })),
    solve: (run, model, quality) =>
      new Promise((resolve, reject) => asked.push({ run, model, quality, answer: resolve, fail: reject })),
  };
  const connect: Connect = (onLost) => {
    starts++;
    lose = onLost;
    return { service, newest, close: () => closed++ };
  };
  const nextTurn = () => new Promise((resolve) => setTimeout(resolve));
  return {
    connect,
    asked,
    advices,
    newest: () => newest[0],
    starts: () => starts,
    closed: () => closed,
    async solved(index: number) {
      const { run, quality, answer } = asked[index];
      // As across a worker, every answer brings its own copy.
      answer({ run, kind: 'solved', result: structuredClone(result), quality });
      await nextTurn();
    },
    async superseded(index: number) {
      asked[index].answer({ run: asked[index].run, kind: 'superseded' });
      await nextTurn();
    },
    async refused(index: number, fault: FaultReport) {
      asked[index].answer({ run: asked[index].run, kind: 'refused', fault });
      await nextTurn();
    },
    async fails(index: number, thrown: unknown) {
      asked[index].fail(thrown);
      await nextTurn();
    },
    async dies(reason: string) {
      lose(reason);
      await nextTurn();
    },
  };
}
