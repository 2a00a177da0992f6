import '@flathead/solver/worker';

// Held until this worker ends, however it ends: the page waits for the lock and so learns of a death without an event.
// It may begin to wait only once the lock is held here.
void navigator.locks?.request(self.name, () => {
  self.postMessage('holding');
  return new Promise(() => {});
});
