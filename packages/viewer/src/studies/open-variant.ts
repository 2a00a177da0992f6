import { applyPlacement, type HeadModel, type Placement, type RowStudyName, type StudyRows } from '@flathead/solver';
import { notify } from '../state/notice-store.ts';
import type { Workbench } from '../state/workbench.ts';
import { MOST_VARIANTS, withNamedVariant } from '../state/workbook.ts';
import { studyRuns } from './runs-here.ts';
import type { StudyRecord } from './study-record.ts';

/** Puts a head on the shelf and the bench, under a name that says where it comes from. */
function openVariant({ head, history, notices }: Workbench, model: HeadModel, what: string): void {
  if (head.getState().book.variants.length >= MOST_VARIANTS) {
    notify(notices, {
      tone: 'trouble',
      title: 'The shelf is full',
      text: `It holds ${MOST_VARIANTS} variants. Delete one, or save them and open a new workbook.`,
    });
    return;
  }
  const name = `${model.name.slice(0, 60)}, ${what}`.slice(0, 95);
  history.editBook((book) => withNamedVariant(book, { ...model, name }));
  notify(notices, {
    tone: 'info',
    title: `${head.getState().model.name} is on the bench`,
    text: 'It is a variant on the shelf; the head before it is untouched.',
    action: { label: 'Go to the bench', run: () => location.assign('#bench') },
  });
}

/** The head of a row of a study as a variant. */
export async function openRow<Name extends RowStudyName>(
  workbench: Workbench,
  record: StudyRecord<Name>,
  row: StudyRows[Name],
  what: string,
): Promise<void> {
  const answer = await studyRuns.variant(record, record.study, row);
  if (answer.ok) openVariant(workbench, answer.value, what);
  else
    notify(workbench.notices, {
      tone: 'trouble',
      title: 'No head can be built of this point',
      text: answer.fault.message,
    });
}

export function openPlacement(workbench: Workbench, model: HeadModel, placement: Placement, what: string): void {
  openVariant(workbench, applyPlacement(model, placement), what);
}
