import type { HeadModel, OrFault, RowStudyName, StudyEnd, StudyName, StudyOrder, StudyRows } from '@flathead/solver';
import { createStore } from 'zustand/vanilla';
import { createGate } from './gate.ts';
import { type GatheredRows, gatherRows } from './gathered-rows.ts';
import { shareRows } from './share-rows.ts';
import { askOwnWorker, type ConnectStudy, type StudyConnection } from './study-connection.ts';
import { isBusy, type StudyRecord, type StudyRecords } from './study-record.ts';

interface StudyRunsState {
  /** The last study of each kind. */
  readonly records: StudyRecords;
}

/** The study that runs, or the last that did. */
interface Run {
  readonly study: StudyName;
  /** Whether it is neither stopped nor replaced. */
  isOn: boolean;
  readonly rows: GatheredRows;
  /** What ends its workers. */
  readonly closers: Set<() => void>;
}

/**
 * The studies of this visit, each kind with its last. They go on while other pages are open. A worker at its rows hears
 * nothing, so a study is stopped by ending its workers: the rows that were told are kept.
 *
 * @param crew most workers that make rows at once
 */
export function createStudyRuns(connect: ConnectStudy, crew: number) {
  const store = createStore<StudyRunsState>()(() => ({ records: {} }));
  const gate = createGate();
  let last: Run | null = null;

  const change = (study: StudyName, part: Partial<StudyRecord>): void =>
    store.setState(({ records }) => ({ records: { ...records, [study]: { ...records[study], ...part } } }));

  const ask = <T>(run: Run, question: (worker: StudyConnection) => Promise<OrFault<T>>): Promise<OrFault<T>> =>
    askOwnWorker(connect, question, (stop) => void run.closers.add(stop));

  const end = (study: StudyName, answer: OrFault<StudyEnd>, state: 'done' | 'stopped'): void => {
    if (answer.ok) change(study, { ...answer.value, state });
    else change(study, { state: state === 'stopped' ? 'stopped' : 'refused', fault: answer.fault });
  };

  const runRows = async (order: StudyOrder<RowStudyName>, run: Run): Promise<void> => {
    const { study } = order;
    const prepared = await ask(run, ({ service }) => service.prepare(order));
    if (!run.isOn) return;
    if (!prepared.ok) return change(study, { state: 'refused', fault: prepared.fault });
    const total = prepared.value ?? 0;
    change(study, { total });
    const goesOn = async (): Promise<boolean> => {
      await gate.passed();
      return run.isOn;
    };
    const ends = await shareRows(order, total, run.rows.tell, {
      most: crew,
      goesOn,
      ask: (question) => ask(run, question),
    });
    if (!run.isOn) return;
    run.rows.flush();
    const broken = ends.find((one) => !one.ok);
    if (broken !== undefined && !broken.ok && run.rows.sorted().length < total)
      return change(study, { state: 'refused', fault: broken.fault });
    change(study, { state: 'ending' });
    const rows = run.rows.sorted() as StudyRows[RowStudyName][];
    const answer = await ask(run, ({ service }) => service.summarise(order, rows, true));
    if (run.isOn) end(study, answer, 'done');
  };

  const place = async (order: StudyOrder<'placement'>, run: Run): Promise<void> => {
    const answer = await ask(run, ({ service, forWorker }) => service.place(order, forWorker(run.rows.tell)));
    if (!run.isOn) return;
    run.rows.flush();
    end('placement', answer, 'done');
  };

  return {
    store,
    /** Runs a study; one that still runs is stopped first. */
    run(study: StudyName, model: HeadModel, plan: Readonly<Record<string, unknown>>): void {
      this.stop();
      if (last !== null) last.isOn = false;
      const run: Run = {
        study,
        isOn: true,
        rows: gatherRows(
          () => run.isOn,
          (rows) => change(study, { rows }),
        ),
        closers: new Set(),
      };
      last = run;
      const begin = { state: 'running', rows: [], total: null, summary: null, text: null, fault: null } as const;
      change(study, { study, model, plan, since: performance.now(), ...begin });
      if (study === 'placement') void place({ study, model, plan }, run);
      else void runRows({ study, model, plan }, run);
    },
    /** Ends the study that runs. What is there of it is kept, and told together. */
    stop(): void {
      const record = last === null ? undefined : store.getState().records[last.study];
      if (last === null || !isBusy(record)) return;
      if (last.isOn) last.rows.flush();
      last.isOn = false;
      for (const close of last.closers) close();
      const { study, model, plan, state, rows } = store.getState().records[last.study]!;
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
      void askOwnWorker(connect, ({ service }) => service.summarise(order, some, false)).then((answer) => {
        if (store.getState().records[study]?.rows === rows) end(study, answer, 'stopped');
      });
    },
    /** Lets it work, or has it wait after the rows that are being made. */
    allow: gate.put,
    /** The head of a row. */
    variant(
      { model, plan }: StudyRecord,
      study: RowStudyName,
      row: StudyRows[RowStudyName],
    ): Promise<OrFault<HeadModel>> {
      return askOwnWorker(connect, ({ service }) => service.variant({ study, model, plan }, row));
    },
  };
}

export type StudyRuns = ReturnType<typeof createStudyRuns>;
