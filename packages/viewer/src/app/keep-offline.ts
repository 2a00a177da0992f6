import { notify } from '../state/notice-store.ts';
import type { Workbench } from '../state/workbench.ts';

/**
 * Has the browser keep the page for visits without a network, once the first answer is there. Of a new version the user
 * is told, and takes it when it suits; the head is kept over it.
 */
export function keepOffline({ run, notices }: Pick<Workbench, 'run' | 'notices'>): void {
  const workers = navigator.serviceWorker;
  if (!import.meta.env.PROD || workers === undefined) return;
  const offer = (waiting: ServiceWorker): void =>
    notify(notices, {
      tone: 'info',
      title: 'A new version of Flathead is here',
      text: 'Your head is kept.',
      action: {
        label: 'Change to it',
        run: () => {
          workers.addEventListener('controllerchange', () => location.reload(), { once: true });
          waiting.postMessage('take over');
        },
      },
    });
  const register = async (): Promise<void> => {
    const registration = await workers.register('./service-worker.js');
    // Without a controller it is the first visit: nothing older is shown.
    if (registration.waiting && workers.controller) offer(registration.waiting);
    registration.addEventListener('updatefound', () => {
      const fresh = registration.installing;
      fresh?.addEventListener('statechange', () => {
        if (fresh.state === 'installed' && workers.controller) offer(fresh);
      });
    });
  };
  const stop = run.subscribe(({ solved }) => {
    if (solved?.quality !== 'full') return;
    stop();
    // A browser that refuses opens the page from the network as before.
    register().catch(() => {});
  });
}
