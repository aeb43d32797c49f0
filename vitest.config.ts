import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    environment: 'node',
    testTimeout: 60_000,
    hookTimeout: 60_000,
    setupFiles: ['tests/seed.ts'],
    globalSetup: ['tests/temporary.ts'],
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          // Loading the language and the templates anew for each of 200 files takes as long as the tests themselves.
          isolate: false,
          // Every core, where vitest would leave one to itself: of two, one would be idle.
          maxWorkers: '100%',
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/site.ts'],
          // After the unit tests, on two cores at once: of a page and what drives it, one works while the other waits.
          maxWorkers: 2,
          // One browser a worker for all its files: starting it takes longer than many a test.
          isolate: false,
          sequence: { groupOrder: 1 },
          // A page on a busy machine takes longer than the second that is usual.
          expect: { poll: { timeout: 20_000 } },
        },
      },
    ],
  },
})
