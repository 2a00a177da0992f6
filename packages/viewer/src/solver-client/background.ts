import { type Answer, faultReport, type HeadModel } from '@flathead/solver';
import { type AnswerStore, answerKey, answerOf, keepAnswer } from '../state/answer-store.ts';
import type { Connect, Connection } from './runner.ts';

/** A solver of its own for heads that nobody waits for at the bench. */
export interface Background {
  /** Heads that someone wants answers of, the most wanted first; takes the place of what that one wanted before. */
  want(owner: string, models: readonly HeadModel[]): void;
  /** Lets it work, or stops it at once: what it works on is begun again later. */
  allow(on: boolean): void;
}

/** A head during which the solver was lost this often is given up. */
const MOST_LOSSES = 2;

/** Solves wanted heads that have no answer yet, one after the other, and keeps what comes. The latest owner goes first. */
export function createBackground(connect: Connect, answers: AnswerStore): Background {
  const wanted = new Map<string, readonly HeadModel[]>();
  /** Times that the solver was lost on a head; those that were answered are not asked for again. */
  const losses = new Map<string, number>();
  const done = new Set<string>();
  let connection: Connection | null = null;
  let current: HeadModel | null = null;
  let allowed = true;
  let run = 0;

  const next = (): HeadModel | undefined =>
    [...wanted.values()]
      .reverse()
      .flat()
      .find((model) => !done.has(answerKey(model)) && answerOf(answers.getState(), model) === null);

  const work = (): void => {
    if (!allowed || current !== null) return;
    const model = next();
    if (model === undefined) return;
    current = model;
    connection ??= start();
    const asked = ++run;
    const settle = (answer: Answer): void => {
      if (asked !== run || current !== model) return;
      if (answer.kind !== 'superseded') finish(model, answer);
      else current = null;
      work();
    };
    connection.service
      .solve(asked, model, 'full', null)
      .then(settle, (thrown) => settle({ run: asked, kind: 'refused', fault: faultReport(thrown) }));
  };

  const finish = (model: HeadModel, answer: Exclude<Answer, { kind: 'superseded' }>): void => {
    current = null;
    done.add(answerKey(model));
    keepAnswer(
      answers,
      model,
      answer.kind === 'solved' ? { kind: 'solved', result: answer.result } : { kind: 'refused', fault: answer.fault },
    );
  };

  const start = (): Connection => {
    const started = connect((reason) => {
      if (connection === started) lost(reason);
    });
    return started;
  };

  const end = (): void => {
    connection?.close();
    connection = null;
    current = null;
    run++;
  };

  const lost = (reason: string): void => {
    const model = current;
    end();
    if (model !== null) {
      const key = answerKey(model);
      losses.set(key, (losses.get(key) ?? 0) + 1);
      if (losses.get(key)! >= MOST_LOSSES)
        finish(model, {
          run,
          kind: 'refused',
          fault: {
            code: 'WORKER_LOST',
            message: `The solver stopped ${MOST_LOSSES} times on this head (${reason}). Make it smaller or its mesh coarser.`,
            path: '',
            details: { reason },
          },
        });
    }
    work();
  };

  return {
    want(owner, models) {
      wanted.delete(owner);
      if (models.length > 0) wanted.set(owner, models);
      work();
    },
    allow(on) {
      if (on === allowed) return;
      allowed = on;
      if (on) work();
      else if (current !== null) end();
    },
  };
}
