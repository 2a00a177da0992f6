/* Served instead while the page is developed: takes what an earlier visit kept away and itself with it. */
self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', async () => {
  for (const name of await caches.keys()) if (name.startsWith('flathead-')) await caches.delete(name);
  await self.registration.unregister();
  for (const client of await self.clients.matchAll()) client.navigate(client.url);
});
