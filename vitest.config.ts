import { defineConfig } from 'vitest/config';

const project = (
  name: string,
  include: string[],
  settings: {
    testTimeout: number;
    exclude?: string[];
    isolate?: boolean;
    retry?: number;
    fileParallelism?: boolean;
    globalSetup?: string;
    expect?: { poll: { timeout: number } };
  },
) => ({
  test: { name, include, ...settings },
});

/** Tests with a clock, which nothing else may run beside. The others share the processors, so one that is late gets a second try. */
const PACE = 'tests/browser/pace.test.ts';
const browser = {
  testTimeout: 180_000,
  globalSetup: 'tests/browser/serve.ts',
  expect: { poll: { timeout: 20_000 } },
};

export default defineConfig({
  test: {
    projects: [
      project('unit', ['packages/*/test/**/*.test.ts'], { testTimeout: 60_000, isolate: false }),
      project('published', ['tests/{published,models}/**/*.test.ts'], { testTimeout: 120_000, isolate: false }),
      project('fuzz', ['tests/fuzz/**/*.test.ts'], { testTimeout: 240_000 }),
      project('command-line', ['tests/command-line/**/*.test.ts'], { testTimeout: 120_000 }),
      project('package', ['tests/package/**/*.test.ts'], { testTimeout: 120_000 }),
      project('browser', ['tests/browser/**/*.test.ts'], { ...browser, exclude: [PACE], retry: 1 }),
      project('pace', [PACE], { ...browser, fileParallelism: false }),
    ],
  },
});
