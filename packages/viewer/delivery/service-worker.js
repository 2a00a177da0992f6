/*
 * Keeps the page in the browser, so that it opens and solves without a network. The whole page is fetched once; a page of
 * one version is served whole from what was kept of it, and a new version waits until the user takes it.
 * FILES and VERSION are filled in when the page is built.
 */
const FILES = '__FILES__';
const KEPT = 'flathead-__VERSION__';

self.addEventListener('install', (event) => {
  event.waitUntil(keep());
});

self.addEventListener('activate', (event) => {
  event.waitUntil(dropOthers().then(() => self.clients.claim()));
});

self.addEventListener('message', ({ data }) => {
  if (data === 'take over') self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(answer(request));
});

async function keep() {
  const cache = await caches.open(KEPT);
  await cache.addAll(FILES.map((file) => new Request(file, { cache: 'no-cache' })));
}

async function dropOthers() {
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith('flathead-') && name !== KEPT).map((name) => caches.delete(name)),
  );
}

async function answer(request) {
  const cache = await caches.open(KEPT);
  // Servers that vary by origin or encoding would else hide what was kept from a request of another kind.
  const kept = await cache.match(request.mode === 'navigate' ? './' : request, { ignoreVary: true });
  return kept ?? fetch(request);
}
