import { backgroundSolver, earlySolver } from './solver-client/connect-worker.ts';

// The solver is the longest to start, so it goes first and the page loads beside it.
const connect = earlySolver();
const { openPage } = await import('./app/open-page.tsx');
await openPage(connect, backgroundSolver);
