import {
  type FaultReport,
  faultReport,
  type HeadModel,
  type OrFault,
  type RowStudyName,
  type StudyEnd,
  type StudyName,
  type StudyOrder,
  type StudyRows,
  type StudyService,
  type TellRow,
} from '@flathead/solver';
import { createStore } from 'zustand/vanilla';
import { isBusy, type StudyRecord, type StudyRecords } from './study-record.ts';

/** A worker that runs studies, until it is closed or lost. */
export interface StudyConnection {
  readonly service: StudyService;
  close(): void;
}

/**
 * Starts one.
 *
 * @param onLost called when it dies; what was asked of it will never be answered
 * @param forWorker what a function becomes that the worker is to call
 */
export type ConnectStudy = (
  onLost: (reason: string) => void,
) => StudyConnection & { forWorker(tell: TellRow): TellRow };

export interface StudyRunsState {
  /** The last study of each kind. */
  readonly records: StudyRecords;
}

/** Rows handed out at once: long enough that neighbours share meshes, short enough to give way to the bench. */
const LONGEST = 24;
const SHARES = 8;
/** Rows are shown in batches, ms. */
const BATCH = 100;

/**
 * The studies of this visit, each kind with its last. They go on while other pages are open. A worker at its rows hears
 * nothing, so a study is stopped by ending its workers: the rows that were told are kept.
 *
 * @param crew most workers that make rows at once
 */
export function createStudyRuns(connect: ConnectStudy, crew: number) {
  const store = createStore<StudyRunsState>()(() => ({ records: {} }));
  let allowed = true;
  let goOn: (() => void) | null = null;
  /** Of the study that runs. */
  let run = 0;
  let closeCrew = (): void => {};
  let flush = (): void => {};

  const change = (study: StudyName, part: Partial<StudyRecord>): void =>
    store.setState(({ records }) => ({ records: { ...records, [study]: { ...records[study], ...part } } }));
  const running = (): StudyRecord | undefined => Object.values(store.getState().records).find(isBusy);

  /** Asks a worker of its own and ends it; a death is answered like a fault. */
  const ask = async <T>(
    question: (worker: ReturnType<ConnectStudy>) => Promise<OrFault<T>>,
    onOpen: (close: () => void) => void = () => {},
  ): Promise<OrFault<T>> => {
    let worker: ReturnType<ConnectStudy> | null = null;
    try {
      return await new Promise<OrFault<T>>((resolve, reject) => {
        worker = connect((reason) => resolve({ ok: false, fault: lost(reason) }));
        onOpen(() => resolve({ ok: false, fault: lost('it was stopped') }));
        question(worker).then(resolve, reject);
      });
    } catch (thrown) {
      return { ok: false, fault: faultReport(thrown) };
    } finally {
      worker!.close();
    }
  };

  const gather = (order: StudyOrder, mine: number) => {
    const rows = new Map<number, StudyRows[StudyName]>();
    let timer: ReturnType<typeof setTimeout> | undefined;
    const sorted = () => [...rows.values()].sort((a, b) => a.index - b.index);
    flush = () => {
      clearTimeout(timer);
      timer = undefined;
      if (mine === run) change(order.study, { rows: sorted() });
    };
    const tell: TellRow = (row) => {
      if (mine !== run || rows.has(row.index)) return;
      rows.set(row.index, row);
      timer ??= setTimeout(flush, BATCH);
    };
    return { tell, sorted };
  };

  const end = (study: StudyName, mine: number, answer: OrFault<StudyEnd>, state: 'done' | 'stopped'): void => {
    if (mine !== run) return;
    if (answer.ok) change(study, { ...answer.value, state });
    else change(study, { state: state === 'stopped' ? 'stopped' : 'refused', fault: answer.fault });
  };

  const runRows = async (order: StudyOrder<RowStudyName>, mine: number, closers: Set<() => void>): Promise<void> => {
    const { tell, sorted } = gather(order, mine);
    const prepared = await ask(({ service }) => service.prepare(order), keepIn(closers));
    if (mine !== run) return;
    if (!prepared.ok) return change(order.study, { state: 'refused', fault: prepared.fault });
    const total = prepared.value ?? 0;
    change(order.study, { total });
    const workers = Math.min(crew, Math.ceil(total / 4));
    const length = Math.max(2, Math.min(LONGEST, Math.ceil(total / (workers * SHARES))));
    let given = 0;
    const work = ({ service, forWorker }: ReturnType<ConnectStudy>): Promise<OrFault<null>> => {
      const told = forWorker(tell);
      const next = async (): Promise<OrFault<null>> => {
        if (!allowed) await new Promise<void>((resolve) => waitFor(resolve));
        if (given >= total || mine !== run) return { ok: true, value: null };
        const indices = Array.from({ length: Math.min(length, total - given) }, (_, k) => given + k);
        given += length;
        const made = await service.rows(order, indices, told);
        if (!made.ok) return made;
        for (const row of made.value) tell(row);
        return next();
      };
      return next();
    };
    const ends = await Promise.all(Array.from({ length: workers }, () => ask(work, keepIn(closers))));
    if (mine !== run) return;
    flush();
    const broken = ends.find((one) => !one.ok);
    if (broken !== undefined && !broken.ok && sorted().length < total)
      return change(order.study, { state: 'refused', fault: broken.fault });
    change(order.study, { state: 'ending' });
    end(
      order.study,
      mine,
      await ask(
        ({ service }) => service.summarise(order, sorted() as StudyRows[RowStudyName][], true),
        keepIn(closers),
      ),
      'done',
    );
  };

  const place = async (order: StudyOrder<'placement'>, mine: number, closers: Set<() => void>): Promise<void> => {
    const { tell } = gather(order, mine);
    const answer = await ask(({ service, forWorker }) => service.place(order, forWorker(tell)), keepIn(closers));
    if (mine === run) flush();
    end(order.study, mine, answer, 'done');
  };

  const waitFor = (resolve: () => void): void => {
    const before = goOn;
    goOn = () => {
      before?.();
      resolve();
    };
  };

  return {
    store,
    /** Runs a study; one that still runs is stopped first. */
    run(study: StudyName, model: HeadModel, plan: Readonly<Record<string, unknown>>): void {
      this.stop();
      const mine = ++run;
      const closers = new Set<() => void>();
      closeCrew = () => {
        for (const close of closers) close();
      };
      change(study, {
        study,
        model,
        plan,
        rows: [],
        total: null,
        state: 'running',
        summary: null,
        text: null,
        fault: null,
      });
      if (study === 'placement') void place({ study, model, plan }, mine, closers);
      else void runRows({ study, model, plan }, mine, closers);
    },
    /** Ends the study that runs. What is there of it is kept, and told together. */
    stop(): void {
      const record = running();
      if (record === undefined) return;
      flush();
      const { study, model, plan, state } = record;
      const { rows } = store.getState().records[study]!;
      const mine = ++run;
      closeCrew();
      if (state === 'ending') {
        change(study, { state: 'stopped' });
        return;
      }
      if (study === 'placement' || rows.length === 0) {
        const text = rows
          .filter((row) => !('kind' in row) || row.kind !== 'progress')
          .map((row) => `${JSON.stringify(row)}\n`)
          .join('');
        change(study, { state: 'stopped', text });
        return;
      }
      change(study, { state: 'ending' });
      const order = { study, model, plan };
      const some = rows as StudyRows[RowStudyName][];
      void ask(({ service }) => service.summarise(order, some, false)).then((answer) =>
        end(study, mine, answer, 'stopped'),
      );
    },
    /** Lets it work, or has it wait after the rows that are being made. */
    allow(on: boolean): void {
      allowed = on;
      if (!on) return;
      goOn?.();
      goOn = null;
    },
    /** The head of a row. */
    variant(
      { model, plan }: StudyRecord,
      study: RowStudyName,
      row: StudyRows[RowStudyName],
    ): Promise<OrFault<HeadModel>> {
      return ask(({ service }) => service.variant({ study, model, plan }, row));
    },
  };
}

export type StudyRuns = ReturnType<typeof createStudyRuns>;

function keepIn(closers: Set<() => void>): (close: () => void) => void {
  return (close) => void closers.add(close);
}

function lost(reason: string): FaultReport {
  return {
    code: 'WORKER_LOST',
    message: `The study ended unexpectedly (${reason}). What was made by then is kept; run it again.`,
    path: '',
    details: { reason },
  };
}
