import { config } from 'zod';

// The schema library tries `eval` when the first schema is made; a page with a strict policy counts that as a breach.
config({ jitless: true });
