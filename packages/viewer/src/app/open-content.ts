import { faultReport, type HeadModel } from '@flathead/solver';
import { typeset } from '../format/number.ts';
import { addRecent, recentOf } from '../keeping/recent.ts';
import { browserStorage } from '../keeping/storage.ts';
import { type FileContent, readContent } from '../keeping/workbook-file.ts';
import { notify } from '../state/notice-store.ts';
import type { Workbench } from '../state/workbench.ts';
import { MOST_VARIANTS, type Workbook, withVariant } from '../state/workbook.ts';

/** More than any workbook needs; a larger file is not even read, MB. */
const MOST_MEGABYTES = 20;

/** Opens a file: a head becomes a new variant, a workbook takes the place of the shelf. One step of undo. */
export async function openFile(workbench: Workbench, file: File): Promise<void> {
  if (file.size > MOST_MEGABYTES * 1e6) {
    const size = (file.size / 1e6).toFixed(0);
    refuse(workbench, file.name, 'TOO_LARGE', `The file has ${size} MB; at most ${MOST_MEGABYTES} are read.`, '');
    return;
  }
  const text = await file.text().catch(() => '');
  openText(workbench, file.name, text);
}

/** Opens the text of a file or of one that the browser keeps. A text that holds nothing is reported; all else stays. */
export function openText(workbench: Workbench, name: string, text: string): void {
  try {
    openContent(workbench, name, readContent(text));
  } catch (thrown) {
    const { code, message, path } = faultReport(thrown);
    refuse(workbench, name, code, message, path);
  }
}

/** Puts content on the shelf and the bench. */
function openContent(workbench: Workbench, name: string, content: FileContent): void {
  const { head, history } = workbench;
  const { book } = head.getState();
  if (content.kind === 'workbook') {
    keepRecent('Workbook before', { kind: 'workbook', book });
    history.editBook(() => content.book);
  } else if (book.variants.length >= MOST_VARIANTS) {
    refuse(workbench, name, 'TOO_LARGE', `The shelf holds ${MOST_VARIANTS} variants. Delete one first.`, '');
    return;
  } else {
    history.editBook((now) => withVariant(now, content.model));
  }
  keepRecent(name, content);
  lookAfresh(workbench);
}

/** Puts a whole workbook in the place of the one on the page, in one step of undo. */
export function replaceBook(workbench: Workbench, book: Workbook): void {
  workbench.history.editBook(() => book);
  lookAfresh(workbench);
}

/** Remembers something as a recent file; where the storage has no room for it, the file itself is what remains. */
export function keepRecent(name: string, content: FileContent): void {
  void addRecent(browserStorage, recentOf(name, content, Date.now())).catch(() => {});
}

/** The head of a link becomes a new variant. */
export function openLink(workbench: Workbench, read: () => HeadModel): void {
  try {
    const model = read();
    openContent(workbench, `${model.name} (link)`, { kind: 'head', model });
    notify(workbench.notices, {
      tone: 'info',
      title: 'A head came with the link',
      text: `${model.name} is on the bench as a variant of its own. What was there is on the shelf.`,
    });
  } catch (thrown) {
    const { code, message, path } = faultReport(thrown);
    refuse(workbench, 'The link', code, message, path);
  }
}

function lookAfresh({ view }: Workbench): void {
  view.setState(({ homeCalls }) => ({ caseName: null, exaggeration: null, homeCalls: homeCalls + 1 }));
}

function refuse({ notices }: Workbench, name: string, code: string, message: string, path: string): void {
  notify(notices, {
    tone: 'trouble',
    title: `${name} was not opened`,
    text: `${code}${path === '' ? '' : ` at ${path}`}: ${typeset(message)} The head on the bench is unchanged.`,
  });
}
