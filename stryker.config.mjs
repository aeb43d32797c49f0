/**
 * Mutation tests: what the tests would not notice. Heavy, so not part of `npm test`. One room at a time, against that
 * room's own tests: `MUTANTS=units npm run mutants`, and within it one file: `-- --mutate src/units/bisection.ts`.
 */
const ROOM = process.env.MUTANTS ?? 'units'

export default {
  testRunner: 'vitest',
  vitest: { configFile: 'tests/mutants.config.ts', related: false },
  // TypeScript 7 has no programming interface for rewriting a tsconfig; a name that is not there leaves it alone.
  tsconfigFile: 'no-tsconfig.json',
  // Only the tests that reach a mutant run against it.
  coverageAnalysis: 'perTest',
  mutate: [
    `src/${ROOM}/**/*.ts`,
    '!src/language/editor/**',
    '!src/language/syntax/parser*.ts',
    '!**/words.ts',
    '!**/*.d.ts',
  ],
  // A share killed below `low` is listed in red; 85 % is the aim for each file.
  thresholds: { high: 95, low: 85, break: null },
  concurrency: 1,
  timeoutMS: 20_000,
  dryRunTimeoutMinutes: 30,
  ignoreStatic: true,
  incremental: true,
  incrementalFile: `node_modules/.cache/mutants/${ROOM.replaceAll('/', '-')}.json`,
  // Not within node_modules, whose files vitest takes for packages.
  tempDirName: '.mutants',
  ignorePatterns: ['dist', 'docs', '.ci'],
  reporters: ['clear-text', 'progress', 'json'],
  jsonReporter: { fileName: 'node_modules/.cache/mutants/report.json' },
  allowEmpty: false,
}
