import fc from 'fast-check'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { run, settings, steps, type Tally } from './model.ts'

/** More, and others: `STORE_RUNS=5000 STORE_SEED=7 npm test -- tests/storage/simulated/model`. */
const RUNS = Number(process.env.STORE_RUNS ?? 60)
const SEED = Number(process.env.STORE_SEED ?? 11)

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'Date', 'performance'] })
})
afterEach(() => {
  vi.useRealTimers()
})

test(`${RUNS} simulated browsers of up to three tabs: nothing acknowledged is lost, nothing unseen is written over`, async () => {
  const tally: Tally = { runs: 0, typed: 0, acknowledged: 0, faults: 0, refused: 0 }
  await fc.assert(
    fc.asyncProperty(settings, steps, (setting, what) => run(setting, what, tally)),
    { numRuns: RUNS, seed: SEED },
  )
  console.log(`The store in simulated browsers: ${JSON.stringify(tally)}`)
  expect(tally.acknowledged).toBeGreaterThan(tally.runs)
}, 600_000)
