import type { LeavingStorage, Storage } from '../../src/keeping/storage.ts';

/** A storage in memory, that can be told to refuse. */
export function memoryStorage(start: Readonly<Record<string, unknown>> = {}) {
  const held = new Map<string, unknown>(Object.entries(start));
  let refusal: Error | null = null;
  const storage: Storage = {
    get: async (key) => held.get(key),
    set: async (key, value) => {
      if (refusal !== null) throw refusal;
      held.set(key, structuredClone(value));
    },
    del: async (key) => {
      held.delete(key);
    },
    keys: async () => [...held.keys()],
  };
  return {
    ...storage,
    held,
    refuse: (error: Error | null) => {
      refusal = error;
    },
  };
}

export function memoryLeaving() {
  const held = new Map<string, string>();
  const leaving: LeavingStorage = {
    getItem: (key) => held.get(key) ?? null,
    setItem: (key, text) => void held.set(key, text),
    removeItem: (key) => void held.delete(key),
  };
  return { ...leaving, held };
}
