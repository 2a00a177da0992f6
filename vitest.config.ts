import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    projects: [
      { test: { name: 'unit', include: ['packages/*/test/**/*.test.ts'], testTimeout: 60_000 } },
      {
        test: {
          name: 'published',
          include: ['tests/{published,models,command-line}/**/*.test.ts'],
          testTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          testTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
