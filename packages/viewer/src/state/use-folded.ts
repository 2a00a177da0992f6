import { useState } from 'react';

const KEY = 'flathead-folded';

/** Whether a part of the recipe is folded up, kept for the next visit where the browser keeps anything. */
export function useFolded(part: string, rare: boolean): readonly [folded: boolean, fold: (folded: boolean) => void] {
  const [folded, setFolded] = useState(() => kept()[part] ?? rare);
  const fold = (next: boolean): void => {
    setFolded(next);
    try {
      localStorage.setItem(KEY, JSON.stringify({ ...kept(), [part]: next }));
    } catch {
      // A browser that keeps nothing opens the parts as new.
    }
  };
  return [folded, fold];
}

function kept(): Readonly<Record<string, boolean>> {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    if (typeof found !== 'object' || found === null) return {};
    return Object.fromEntries(Object.entries(found).filter(([, value]) => typeof value === 'boolean'));
  } catch {
    return {};
  }
}
