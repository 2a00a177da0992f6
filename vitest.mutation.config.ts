import { defineConfig } from 'vitest/config';

/** Unit tests of the solver: what mutants of its core are held against. */
export default defineConfig({
  test: {
    include: ['packages/solver/test/{element,section,supports,results,linear-algebra,assembly}/**/*.test.ts'],
    testTimeout: 60_000,
  },
});
