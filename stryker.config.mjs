const room = process.env.MUTATED_ROOM;

/** Mutants of the solver core and what notices them; `npm run mutate` runs it on a sample, see scripts/mutate.mjs. */
export default {
  testRunner: 'vitest',
  vitest: { configFile: 'vitest.mutation.config.ts', related: false },
  plugins: ['@stryker-mutator/vitest-runner'],
  coverageAnalysis: 'perTest',
  concurrency: 1,
  timeoutMS: 20_000,
  dryRunTimeoutMinutes: 30,
  ignoreStatic: true,
  // Tests run without types, and some read sources as text.
  disableTypeChecks: false,
  reporters: ['json', 'clear-text'],
  jsonReporter: { fileName: `dist/mutation${room === undefined ? '' : `-${room}`}.json` },
  // Copies of other runs and what is built.
  ignorePatterns: ['/dist'],
  tempDirName: `dist/mutation${room === undefined ? '' : `-${room}`}`,
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
};
