import { createStore } from 'zustand/vanilla';

/** Something the user should know, until it is dismissed. */
export interface Notice {
  readonly id: number;
  readonly tone: 'info' | 'trouble';
  readonly title: string;
  readonly text: string;
  /** About what was just done on the stage: said there, and gone after some seconds. */
  readonly brief?: boolean;
  readonly action?: { readonly label: string; readonly run: () => void };
}

export interface NoticeState {
  readonly notices: readonly Notice[];
}

export function createNoticeStore() {
  return createStore<NoticeState>()(() => ({ notices: [] }));
}

export type NoticeStore = ReturnType<typeof createNoticeStore>;

/** Shows a notice; an older one of the same title gives way. */
export function notify(store: NoticeStore, notice: Omit<Notice, 'id'>): void {
  store.setState(({ notices }) => {
    const id = 1 + Math.max(0, ...notices.map((other) => other.id));
    return { notices: [...notices.filter(({ title }) => title !== notice.title), { ...notice, id }] };
  });
}

export function dismiss(store: NoticeStore, id: number): void {
  store.setState(({ notices }) => ({ notices: notices.filter((notice) => notice.id !== id) }));
}
