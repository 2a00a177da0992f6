import { Worker } from 'node:worker_threads';
import { Fault, type FaultReport, type HeadModel, type StudyKind, type StudyRow } from '@flathead/solver';

/** What a helper needs to make rows of a study. */
export interface StudyOrder {
  readonly kind: StudyKind;
  readonly model: HeadModel;
  readonly plan: object;
}

export interface ToHelper {
  readonly indices: readonly number[];
}

export type FromHelper<Row = StudyRow> =
  | { readonly row: Row }
  | { readonly done: true }
  | { readonly fault: FaultReport };

/** Rows handed out at once: long enough that neighbours share meshes, short enough that helpers end together. */
const LONGEST = 64;
const SHARES = 8;

/**
 * Makes rows on helper threads. They come by index, each as soon as all before it are there; when stopped, the others that
 * are already made come as well.
 *
 * @param file that the helpers run
 * @throws Fault WORKER_LOST when a helper dies
 */
export async function byCrew<Row extends StudyRow>(
  file: string,
  helpers: number,
  order: StudyOrder,
  indices: readonly number[],
  signal: AbortSignal,
  onRow: (row: Row) => void,
): Promise<void> {
  const length = Math.max(1, Math.min(LONGEST, Math.ceil(indices.length / (helpers * SHARES))));
  const made = new Map<number, Row>();
  let next = 0;
  let given = 0;
  const flush = (): void => {
    for (let row = made.get(indices[next]); row !== undefined; row = made.get(indices[next])) {
      made.delete(indices[next]);
      next += 1;
      onRow(row);
    }
  };
  const workers = Array.from({ length: helpers }, () => new Worker(file, { workerData: order }));
  const works = (worker: Worker): Promise<void> =>
    new Promise((resolve, reject) => {
      const give = (): void => {
        if (given >= indices.length || signal.aborted) {
          resolve();
          return;
        }
        const chunk: ToHelper = { indices: indices.slice(given, given + length) };
        given += length;
        worker.postMessage(chunk);
      };
      worker.on('message', (message: FromHelper<Row>) => {
        if ('row' in message) {
          made.set(message.row.index, message.row);
          flush();
        } else if ('fault' in message) {
          const { code, message: text, path, details } = message.fault;
          reject(new Fault(code, text, path, details));
        } else give();
      });
      const lost = (reason: string): void =>
        reject(new Fault('WORKER_LOST', `A helper thread ended: ${reason}. Run the study again with --workers 1.`));
      worker.on('error', (error) => lost(String(error)));
      worker.on('exit', (code) => lost(`exit code ${code}`));
      signal.addEventListener('abort', () => resolve());
      give();
    });
  try {
    await Promise.all(workers.map(works));
  } finally {
    for (const worker of workers) worker.removeAllListeners('exit');
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
  for (const [, row] of [...made].sort(([a], [b]) => a - b)) onRow(row);
}
