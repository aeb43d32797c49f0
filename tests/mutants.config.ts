import { defineConfig } from 'vitest/config'

/** The room whose tests run: `units`, `language`, `worksheet/engine`. */
const ROOM = process.env.MUTANTS ?? 'units'

/** The unit tests of one room, as mutation testing runs them. */
export default defineConfig({
  test: {
    environment: 'node',
    testTimeout: 60_000,
    setupFiles: ['tests/seed.ts', 'tests/mutants-setup.ts'],
    include: [`tests/${ROOM}/**/*.test.ts`],
  },
})
