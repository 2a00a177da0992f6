import { createContext, useContext } from 'react';
import { type Found, findWorkbook, setAside } from '../keeping/generations.ts';
import { createKeeper, type Keeper } from '../keeping/keeper.ts';
import { holdsHead, readHeadLink } from '../keeping/link.ts';
import { browserStorage, leavingStorage } from '../keeping/storage.ts';
import { type Turn, waitForTurn } from '../keeping/turn.ts';
import { notify } from '../state/notice-store.ts';
import type { Workbench } from '../state/workbench.ts';
import { keepRecent, openLink, replaceBook } from './open-content.ts';
import { saveText, saveWorkbook } from './save-file.ts';

/** How the page keeps its work in the browser. */
export interface Keeping {
  readonly keeper: Keeper;
  readonly turn: Turn;
}

export const KeepingContext = createContext<Keeping | null>(null);

/** `null` where nothing is kept. */
export function useKeeping(): Keeping | null {
  return useContext(KeepingContext);
}

const NOTHING: Found = { book: null, at: 0, counter: 0, next: 1, unread: [], fromOlder: null, newerVersions: [] };

/** What the browser kept of the last visit. A browser that keeps nothing is no reason not to open. */
export function keptWork(): Promise<Found> {
  return findWorkbook(browserStorage, leavingStorage()).catch(() => NOTHING);
}

/** Keeps the workbook in the browser from now on, and tells what the user must know of it. */
export function keepWork(workbench: Workbench, found: Found): Keeping {
  const { head, notices } = workbench;
  const keeper = createKeeper(head, browserStorage, leavingStorage(), found);
  const regain = async (): Promise<void> => {
    const held = await keptWork();
    if (held.book !== null && held.counter !== keeper.counter()) {
      if (keeper.behind()) {
        keepRecent('From the other tab', { kind: 'workbook', book: held.book });
        notify(notices, {
          tone: 'info',
          title: 'This tab keeps your work now',
          text: 'What the other tab left is among the recent files.',
        });
      } else replaceBook(workbench, held.book);
      keeper.know(held);
    }
    keeper.setTurn(true);
  };
  const turn = waitForTurn(navigator, {
    ours: (waited) => (waited ? void regain() : keeper.setTurn(true)),
    elsewhere() {
      keeper.setTurn(false);
      notify(notices, {
        tone: 'trouble',
        title: 'Your work is open in another tab',
        text: 'That tab keeps it; edits here are not kept until it is closed or you go on here. Nothing of either is written over.',
        action: { label: 'Go on here', run: () => turn.take() },
      });
    },
    handOver: () => keeper.flush(),
  });
  keeper.state.subscribe(({ status, problem }, before) => {
    if (status !== 'failed' || before.status === 'failed') return;
    notify(notices, {
      tone: 'trouble',
      title: 'Your work is not being kept',
      text:
        problem?.kind === 'full'
          ? 'The browser has no room left for this page. Your work stays on the page: save it as a file, then make room by clearing the recent files or data of other sites.'
          : `The browser's storage refused it (${problem?.message ?? ''}). Your work stays on the page: save it as a file before you leave.`,
      action: { label: 'Save the workbook', run: () => saveWorkbook(head.getState().book) },
    });
  });
  tellOf(workbench, found);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'hidden') return;
    keeper.leave();
    void keeper.flush();
  });
  window.addEventListener('pagehide', () => keeper.leave());
  window.addEventListener('beforeunload', (event) => {
    const { status } = keeper.state.getState();
    if (keeper.behind() && (status === 'failed' || status === 'elsewhere')) event.preventDefault();
  });
  takeLink(workbench);
  window.addEventListener('hashchange', () => takeLink(workbench));
  return { keeper, turn };
}

/** Tells of what is in the storage and was not opened. */
function tellOf({ notices }: Workbench, { book, unread, fromOlder, newerVersions }: Found): void {
  for (const entry of unread) void setAside(browserStorage, entry).catch(() => {});
  if (unread.length > 0)
    notify(notices, {
      tone: 'trouble',
      title: 'The last of your work could not be read',
      text: `${unread[0].fault.message} ${book === null ? 'There is none before it.' : 'What was kept just before it is on the bench.'} The unreadable part is left as it is, under a key of its own.`,
      action: {
        label: 'Save the unreadable part',
        run: () => saveText('flathead-unread.json', `${JSON.stringify(unread.map(({ raw }) => raw))}\n`),
      },
    });
  if (fromOlder !== null) {
    keepRecent('From an older version of this page', { kind: 'workbook', book: fromOlder });
    notify(notices, {
      tone: 'info',
      title: 'An older version of this page was used here since',
      text: 'What was kept there is among the recent files; what you left on this one is on the bench.',
    });
  }
  if (newerVersions.length > 0)
    notify(notices, {
      tone: 'info',
      title: 'A newer version of this page has work here',
      text: `Its workbook is of format version ${newerVersions.join(', ')}, which this page does not read. It is left untouched; open the newer page to go on with it.`,
    });
}

/** Opens the head that the address holds, once. */
function takeLink(workbench: Workbench): void {
  const { hash } = location;
  if (!holdsHead(hash)) return;
  window.history.replaceState(null, '', `${location.pathname}${location.search}`);
  openLink(workbench, () => readHeadLink(hash));
}
