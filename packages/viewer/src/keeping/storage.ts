import { del, get, keys, set } from 'idb-keyval';

/** The browser's storage, or what stands for it in a test. */
export interface Storage {
  get(key: string): Promise<unknown>;
  set(key: string, value: unknown): Promise<void>;
  del(key: string): Promise<void>;
  keys(): Promise<readonly string[]>;
}

/** A small storage that answers at once, for the moment in which the page is left. */
export type LeavingStorage = Pick<globalThis.Storage, 'getItem' | 'setItem' | 'removeItem'>;

export const browserStorage: Storage = {
  get: (key) => get(key),
  set: (key, value) => set(key, value),
  del: (key) => del(key),
  keys: async () => (await keys()).map(String),
};

/** Local storage, or nothing where the browser gives none. */
export function leavingStorage(): LeavingStorage | null {
  try {
    return globalThis.localStorage;
  } catch {
    return null;
  }
}
