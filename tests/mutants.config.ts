import { defineConfig } from 'vitest/config'

/** The room whose tests run: `units`, `language`, `worksheet/engine`. */
const ROOM = process.env.MUTANTS ?? 'units'

/** Named tests alone, separated by commas, where a whole room takes too long. */
const NAMED = (process.env.MUTANTS_TESTS ?? '').split(',').filter(Boolean)

/** The unit tests of one room, as mutation testing runs them. */
export default defineConfig({
  test: {
    environment: 'node',
    isolate: false,
    testTimeout: 60_000,
    setupFiles: ['tests/seed.ts', 'tests/mutants-setup.ts'],
    include: NAMED.length > 0 ? NAMED : [`tests/${ROOM}/**/*.test.ts`],
  },
})
