import { spawnSync } from 'node:child_process';

/** Whether pdftotext is on this machine. */
export function hasPdfReader() {
  return spawnSync('pdftotext', ['-v'], { stdio: 'ignore' }).error === undefined;
}
