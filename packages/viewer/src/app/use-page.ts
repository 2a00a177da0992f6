import { useSyncExternalStore } from 'react';
import { pageOf } from './pages.ts';

/** Id of the page that the address names: reload, back and forward lead to it. */
export function usePage(): string {
  return useSyncExternalStore(listen, () => pageOf(location.hash));
}

function listen(changed: () => void): () => void {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
}
