import { defineConfig } from 'vitest/config';

const project = (
  name: string,
  include: string[],
  settings: {
    testTimeout: number;
    isolate?: boolean;
    fileParallelism?: boolean;
    globalSetup?: string;
    expect?: { poll: { timeout: number } };
  },
) => ({
  test: { name, include, ...settings },
});

export default defineConfig({
  test: {
    projects: [
      project('unit', ['packages/*/test/**/*.test.ts'], { testTimeout: 60_000, isolate: false }),
      project('published', ['tests/{published,models}/**/*.test.ts'], { testTimeout: 120_000, isolate: false }),
      project('fuzz', ['tests/fuzz/**/*.test.ts'], { testTimeout: 240_000 }),
      project('command-line', ['tests/command-line/**/*.test.ts'], { testTimeout: 120_000 }),
      project('package', ['tests/package/**/*.test.ts'], { testTimeout: 120_000 }),
      project('browser', ['tests/browser/**/*.test.ts'], {
        testTimeout: 180_000,
        fileParallelism: false,
        globalSetup: 'tests/browser/serve.ts',
        expect: { poll: { timeout: 20_000 } },
      }),
    ],
  },
});
