import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    environment: 'node',
    testTimeout: 60_000,
    hookTimeout: 60_000,
    setupFiles: ['tests/seed.ts'],
    projects: [
      {
        extends: true,
        test: { name: 'unit', include: ['tests/**/*.test.ts'], exclude: ['tests/browser/**'] },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/site.ts'],
          // After the unit tests, two files at a time: a page spends much of its time waiting.
          maxWorkers: 2,
          // One browser for all files of a worker: starting it takes longer than many a test.
          isolate: false,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
})
