import '@flathead/solver/worker';

// Held until this worker ends, however it ends: the page waits for the lock and so learns of a death without an event.
void navigator.locks?.request(self.name, () => new Promise(() => {}));
self.postMessage('started');
