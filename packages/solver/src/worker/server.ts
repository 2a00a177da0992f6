import { expose } from 'comlink';
import { startWebCrew } from './crew-web.ts';
import { solverService } from './service.ts';

/** A turn of the event loop that is not clamped to milliseconds, as a timer would be. */
function breathe(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

// A page may ask for a solver without helpers, which leaves the other processors alone, by the end of its name.
expose(solverService(breathe, self.name.endsWith('-alone') ? null : startWebCrew()));
