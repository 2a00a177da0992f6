import { createStore } from 'zustand/vanilla';

/** What the report says beside the numbers, as typed. */
export interface ReportFields {
  readonly project: string;
  readonly author: string;
  /** Names of who checks and approves; empty to be written by hand. */
  readonly checked: string;
  readonly approved: string;
  readonly revision: string;
  readonly note: string;
}

interface FieldState {
  /** By the name of the head, the last used last. */
  readonly byHead: Readonly<Record<string, ReportFields>>;
}

const KEY = 'flathead-report';
const MOST_HEADS = 60;
const EMPTY: ReportFields = { project: '', author: '', checked: '', approved: '', revision: '', note: '' };

/** The fields of all heads, kept in the browser: they belong to who reports, not to the model. */
export function createFieldStore(storage: Pick<Storage, 'getItem' | 'setItem'> | null) {
  const store = createStore<FieldState>()(() => ({ byHead: stored(storage) }));
  store.subscribe(({ byHead }) => {
    try {
      storage?.setItem(KEY, JSON.stringify(byHead));
    } catch {
      // Storage that is full or closed keeps nothing; the report of this visit has the fields all the same.
    }
  });
  return store;
}

export type FieldStore = ReturnType<typeof createFieldStore>;

/** Fields of a head; a head without its own takes project and author from the one written last. */
export function fieldsOf({ byHead }: FieldState, name: string): ReportFields {
  if (Object.hasOwn(byHead, name)) return byHead[name];
  const last = Object.values(byHead).at(-1) ?? EMPTY;
  return { ...EMPTY, project: last.project, author: last.author };
}

export function writeField(store: FieldStore, name: string, field: keyof ReportFields, text: string): void {
  store.setState((state) => {
    const { [name]: _, ...others } = state.byHead;
    const kept = Object.entries(others).slice(1 - MOST_HEADS);
    return { byHead: Object.fromEntries([...kept, [name, { ...fieldsOf(state, name), [field]: text }]]) };
  });
}

function stored(storage: Pick<Storage, 'getItem'> | null): Record<string, ReportFields> {
  try {
    const found: unknown = JSON.parse(storage?.getItem(KEY) ?? '{}');
    if (typeof found !== 'object' || found === null) return {};
    return Object.fromEntries(Object.entries(found).map(([name, fields]) => [name, readable(fields)]));
  } catch {
    return {};
  }
}

/** Fields of whatever was stored; what is no text is empty. */
function readable(fields: unknown): ReportFields {
  const text = (field: keyof ReportFields): string => {
    const value: unknown = typeof fields === 'object' && fields !== null ? Reflect.get(fields, field) : '';
    return typeof value === 'string' ? value : '';
  };
  return {
    ...{ project: text('project'), author: text('author'), checked: text('checked'), approved: text('approved') },
    ...{ revision: text('revision'), note: text('note') },
  };
}
