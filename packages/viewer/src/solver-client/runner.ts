import {
  type Advice,
  type Answer,
  type FaultReport,
  faultReport,
  type HeadModel,
  type SolverService,
} from '@flathead/solver';

type Quality = 'full' | 'live';

/** A solver somewhere else, until it is closed or lost. */
export interface Connection {
  readonly service: SolverService;
  /** `[1]` shared with the solver: the newest run it was sent, which ends older ones; null where it can't be shared. */
  readonly newest: Int32Array<SharedArrayBuffer> | null;
  close(): void;
}

/** Starts a solver. @param onLost called when it dies; what was asked of it will never be answered */
export type Connect = (onLost: (reason: string) => void) => Connection;

export interface RunnerEvents {
  /** A model is being solved, or nothing is any more. */
  solving(model: HeadModel | null): void;
  solved(model: HeadModel, answer: Extract<Answer, { kind: 'solved' }>): void;
  refused(model: HeadModel, fault: FaultReport): void;
  /**
   * What would help the head of the last full answer; asked for once that answer is told and nothing else waits. `null`
   * also where it could not be found out.
   */
  advised(model: HeadModel, advice: Advice | null): void;
  /** The solver was lost and a fresh one started. */
  restarted(reason: string): void;
}

export interface Runner {
  solve(model: HeadModel, quality: Quality): void;
  /** Delivers nothing of what was asked so far; the solver goes on with what comes next. */
  forget(): void;
  /** Ends what is being solved by ending the solver; a fresh one starts with the next request. */
  stop(): void;
}

interface Request {
  readonly run: number;
  readonly model: HeadModel;
  readonly quality: Quality;
  /** Solvers lost while they worked on it. */
  readonly losses: number;
}

/** A request that was under way at this many deaths is given up. */
const MOST_LOSSES = 2;

/**
 * Sends models to a solver so that the latest wins and a drag keeps moving.
 *
 * At most one request waits, the newest. A live run is let finish, so that each gives a picture; a full run is
 * overtaken at its next step by whatever comes after it. A lost solver is replaced and the newest request sent again.
 */
export function createRunner(connect: Connect, events: RunnerEvents): Runner {
  let connection: Connection | null = null;
  let run = 0;
  let delivered = 0;
  let waiting: Request | null = null;
  const running = new Map<number, Request>();
  /** The model that advice is being sought for. */
  let advising: HeadModel | null = null;

  const newest = (): Request | null => waiting ?? [...running.values()].at(-1) ?? null;

  const send = (): void => {
    if (waiting === null || [...running.values()].some(({ quality }) => quality === 'live')) return;
    const request = waiting;
    waiting = null;
    running.set(request.run, request);
    connection ??= start();
    const { service, newest: latest } = connection;
    if (latest !== null) Atomics.store(latest, 0, request.run);
    service.solve(request.run, request.model, request.quality, latest).then(
      (answer) => settle(request, answer),
      (thrown) => settle(request, { run: request.run, kind: 'refused', fault: faultReport(thrown) }),
    );
  };

  const settle = (request: Request, answer: Answer): void => {
    // A request of a solver that was lost since is no longer running.
    if (running.get(request.run) !== request) return;
    running.delete(request.run);
    send();
    if (newest() === null) events.solving(null);
    if (answer.kind === 'superseded' || request.run < delivered) return;
    delivered = request.run;
    if (answer.kind === 'refused') {
      events.refused(request.model, answer.fault);
      return;
    }
    events.solved(request.model, answer);
    if (request.quality === 'full' && run === request.run) askAdvice(request);
  };

  /** Advice that a newer request overtakes is of no interest, nor is why it failed. */
  const askAdvice = ({ run: asked, model }: Request): void => {
    const from = connection;
    const told = (advice: Advice | null): void => {
      if (connection !== from || run !== asked) return;
      advising = null;
      events.advised(model, advice);
    };
    advising = model;
    from?.service.advise(asked, from.newest).then(told, () => told(null));
  };

  const start = (): Connection => {
    const started = connect((reason) => {
      if (connection === started) lost(reason);
    });
    return started;
  };

  const lost = (reason: string): void => {
    const last = newest();
    end();
    if (last === null) {
      events.restarted(reason);
    } else if (last.losses + 1 < MOST_LOSSES) {
      waiting = { ...last, losses: last.losses + 1 };
      events.restarted(reason);
      send();
    } else {
      events.solving(null);
      events.refused(last.model, {
        code: 'WORKER_LOST',
        message: `The solver stopped ${MOST_LOSSES} times on this head (${reason}). Undo the last change, or make the head smaller or its mesh coarser.`,
        path: '',
        details: { reason },
      });
    }
  };

  const end = (): void => {
    connection?.close();
    connection = null;
    waiting = null;
    running.clear();
    if (advising !== null) events.advised(advising, null);
    advising = null;
  };

  return {
    solve(model, quality) {
      advising = null;
      waiting = { run: ++run, model, quality, losses: 0 };
      events.solving(model);
      send();
    },
    forget() {
      advising = null;
      waiting = null;
      delivered = ++run;
      if (connection?.newest) Atomics.store(connection.newest, 0, run);
      events.solving(null);
    },
    stop() {
      const last = newest();
      end();
      events.solving(null);
      if (last !== null)
        events.refused(last.model, {
          code: 'CANCELLED',
          message: 'Stopped before there was an answer. Any edit solves again.',
          path: '',
          details: {},
        });
    },
  };
}
