import { type FaultReport, faultReport, type OrFault, type StudyService, type TellRow } from '@flathead/solver';

/** A worker that runs studies, until it is closed or lost. */
export interface StudyConnection {
  readonly service: StudyService;
  /** What a function becomes that the worker is to call. */
  forWorker(tell: TellRow): TellRow;
  close(): void;
}

/**
 * Starts one.
 *
 * @param onLost called when it dies; what was asked of it will never be answered
 */
export type ConnectStudy = (onLost: (reason: string) => void) => StudyConnection;

/**
 * Asks a worker of its own and ends it; a death is answered like a fault.
 *
 * @param onOpen told at once what stops the question: it is then answered as if the worker had died
 */
export async function askOwnWorker<T>(
  connect: ConnectStudy,
  question: (worker: StudyConnection) => Promise<OrFault<T>>,
  onOpen: (stop: () => void) => void = () => {},
): Promise<OrFault<T>> {
  let worker: StudyConnection | null = null;
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
}

function lost(reason: string): FaultReport {
  return {
    code: 'WORKER_LOST',
    message: `The study ended unexpectedly (${reason}). What was made by then is kept; run it again.`,
    path: '',
    details: { reason },
  };
}
