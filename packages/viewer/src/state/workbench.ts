import type { HeadModel } from '@flathead/solver';
import type { Background } from '../solver-client/background.ts';
import { keepSolved } from '../solver-client/keep-solved.ts';
import { keepVariantsSolved } from '../solver-client/keep-variants-solved.ts';
import type { Connect, Runner } from '../solver-client/runner.ts';
import { type AnswerStore, createAnswerStore } from './answer-store.ts';
import { createDraftStore, type DraftStore } from './draft-store.ts';
import { createHeadStore, type HeadStore } from './head-store.ts';
import { createHistory, type History } from './history.ts';
import { keepAccepted } from './keep-accepted.ts';
import { createNoticeStore, type NoticeStore, notify } from './notice-store.ts';
import { createPointerStore, type PointerStore } from './pointer-store.ts';
import { createRunStore, type RunStore } from './run-store.ts';
import { createViewStore, type ViewStore } from './view-store.ts';
import type { Workbook } from './workbook.ts';

/** All state of the page. The stores know nothing of React; panels and scene subscribe to what they show. */
export interface Workbench {
  readonly head: HeadStore;
  readonly history: History;
  readonly run: RunStore;
  readonly view: ViewStore;
  readonly pointer: PointerStore;
  readonly drafts: DraftStore;
  readonly notices: NoticeStore;
  readonly runner: Runner;
  readonly answers: AnswerStore;
  readonly background: Background;
}

/** A page on a workbook, or on a first head, with its solver started. */
export function createWorkbench(
  start: HeadModel | Workbook,
  connect: Connect,
  connectBackground: Connect = connect,
): Workbench {
  const head = createHeadStore(start);
  const run = createRunStore();
  const pointer = createPointerStore();
  const notices = createNoticeStore();
  const answers = createAnswerStore();
  const drafts = createDraftStore();
  const onRestart = (reason: string): void =>
    notify(notices, {
      tone: 'info',
      title: 'The solver was restarted',
      text: `It had stopped (${reason}). Your head is untouched and is being solved again.`,
    });
  const runner = keepSolved(head, pointer, run, connect, onRestart, answers);
  const background = keepVariantsSolved(head, pointer, run, answers, connectBackground);
  // Text that did not reach one variant is nothing to another.
  head.subscribe(({ book }, before) => {
    if (book.bench !== before.book.bench) drafts.setState({ drafts: {} });
  });
  const history = createHistory(head);
  keepAccepted({ head, history, pointer, run, notices });
  return {
    head,
    history,
    run,
    view: createViewStore(),
    pointer,
    drafts,
    notices,
    runner,
    answers,
    background,
  };
}
