import { faultReport, readHeadModel } from '@flathead/solver';
import { typeset } from '../format/number.ts';
import { notify } from '../state/notice-store.ts';
import type { Workbench } from '../state/workbench.ts';

/** More than any head needs; a larger file is not even read, MB. */
const MOST_MEGABYTES = 20;

/** Puts the head of a file on the bench, as one step of undo. A file that holds none is reported; the head stays. */
export async function openModel({ history, notices, view }: Workbench, file: File): Promise<void> {
  const refuse = (code: string, message: string, path: string): void =>
    notify(notices, {
      tone: 'trouble',
      title: `${file.name} was not opened`,
      text: `${code}${path === '' ? '' : ` at ${path}`}: ${typeset(message)} The head on the bench is unchanged.`,
    });
  if (file.size > MOST_MEGABYTES * 1e6) {
    const size = (file.size / 1e6).toFixed(0);
    refuse('TOO_LARGE', `The file has ${size} MB; a head model has at most ${MOST_MEGABYTES}.`, '');
    return;
  }
  try {
    const model = readHeadModel(await file.text());
    history.edit(() => model);
    view.setState(({ homeCalls }) => ({ caseName: null, exaggeration: null, homeCalls: homeCalls + 1 }));
  } catch (thrown) {
    const { code, message, path } = faultReport(thrown);
    refuse(code, message, path);
  }
}
