import { parentPort, workerData } from 'node:worker_threads';
import { faultReport, studyOf } from '@flathead/solver';
import type { FromHelper, StudyOrder, ToHelper } from './study-crew.ts';

/* What a helper thread of a study runs: makes the rows it is sent the indices of. */

const { kind, model, plan }: StudyOrder = workerData;
const study = studyOf(kind, model, plan);

parentPort?.on('message', ({ indices }: ToHelper) => {
  const send = (message: FromHelper): void => parentPort?.postMessage(message);
  try {
    for (const row of study.rows(indices)) send({ row });
    send({ done: true });
  } catch (thrown) {
    send({ fault: faultReport(thrown) });
  }
});
