import fc from 'fast-check'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { asked, report } from '../../endurance/report.ts'
import { run, settings, steps, type Tally } from './model.ts'

/** More: `npm run endurance -- store`. A seed replays a failure. */
const RUNS = asked('STORE_RUNS', 25)
const SEED = asked('STORE_SEED', 11)

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
  report('store', { seed: SEED, ...tally })
  expect(tally.acknowledged).toBeGreaterThan(tally.runs)
}, 7_200_000)
