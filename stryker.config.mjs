/**
 * Mutation tests: what the tests would not notice. Heavy, so not part of `npm test`. `scripts/mutants.mjs` runs them file by
 * file, each against its room's own tests.
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
  // A mutant that loops without end costs this much and a little more than its tests take.
  timeoutMS: 5_000,
  timeoutFactor: 1.2,
  dryRunTimeoutMinutes: 30,
  ignoreStatic: true,
  incremental: true,
  incrementalFile: `node_modules/.cache/mutants/${process.env.MUTANTS_FILE ?? ROOM.replaceAll('/', '-')}.json`,
  // Not within node_modules, whose files vitest takes for packages.
  tempDirName: '.mutants',
  ignorePatterns: ['dist', 'docs', '.ci'],
  reporters: ['clear-text', 'progress', 'json'],
  jsonReporter: { fileName: 'node_modules/.cache/mutants/report.json' },
  allowEmpty: false,
}
