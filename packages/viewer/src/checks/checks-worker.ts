import { faultReport } from '@flathead/solver';
import { verificationCases, verificationSteps } from '@flathead/solver/verification';
import type { ChecksAnswer, ChecksRequest } from './protocol.ts';

const tell = (answer: ChecksAnswer): void => self.postMessage(answer);

self.addEventListener('message', ({ data }: MessageEvent<ChecksRequest>) => {
  try {
    for (const row of verificationSteps(data.topic === null ? {} : { topic: data.topic })) tell({ kind: 'row', row });
    tell({ kind: 'done' });
  } catch (thrown) {
    tell({ kind: 'trouble', message: faultReport(thrown).message });
  }
});

tell({ kind: 'book', cases: verificationCases() });
