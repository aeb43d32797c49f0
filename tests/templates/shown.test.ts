import fc from 'fast-check'
import { afterAll, describe, expect, test } from 'vitest'
import { STOP, TIME } from '../../src/units/dimension.ts'
import { isNamed } from '../../src/worksheet/index.ts'
import { JOBS, jobWith, openJob } from '../worksheet/advice/jobs.ts'

// How a figure is written in the trade: common practice, no source.

/** Whole stops, tenths or hundredths. */
const STOPS = /^[+−]?\d+(\.\d{1,2})?( ± \d+(\.\d{1,2})?)?$/

const seen = { stops: 0, times: 0, typed: 0 }
const fail = (said: string): never => expect.fail(said)
afterAll(() => {
  for (const count of Object.values(seen)) expect(count).toBeGreaterThan(20)
})

describe.each(JOBS)('what %s shows', (job) => {
  test('is written as the trade reads it: stops to a hundredth, times as 1/n s, what is typed with its digits', () => {
    fc.assert(
      fc.property(jobWith(job, 2), (texts) => {
        const sheet = openJob(job, texts)
        for (const cell of sheet.cells.filter(isNamed)) {
          if (cell.kind === 'check') {
            const { message, state } = sheet.check(cell.id)
            if (state === 'error') continue
            expect(message, cell.name).not.toMatch(/\d\.\d{3,} stop\b/)
            // Parts of a second below half are fractions; a whole sheet of figures has no other use for a bare 0.0x s.
            expect(message, cell.name).not.toMatch(/\b0\.0\d+ s\b/)
            continue
          }
          const outcome = sheet.outcome(cell.id)
          if (outcome.state !== 'value' || outcome.type.kind !== 'number' || typeof outcome.value !== 'number') continue
          const { text, figure, unit } = outcome.shown
          const said = `${cell.name}: ${text}`
          if (
            outcome.type.dimension.key === STOP.key &&
            unit === 'stop' &&
            Number.isFinite(outcome.value) &&
            cell.kind !== 'given'
          )
            seen.stops += Number(STOPS.test(figure) || fail(said))
          if (
            outcome.type.dimension.key === TIME.key &&
            outcome.type.notation === 'shutter' &&
            outcome.value < 0.3 &&
            outcome.value > 0
          )
            seen.times += Number(/^1\/[\d.\s]+ s/.test(text) || fail(said))
          // Every digit typed is shown again.
          const digits = cell.kind === 'given' && /^[\d.]+$/.test(cell.value) ? cell.value.replace(/^0+(?=\d)/, '') : ''
          if (digits !== '' && !outcome.type.notation && !String(cell.unit ?? '').includes('/'))
            seen.typed += Number(figure.replaceAll(/\s/g, '').includes(String(Number(digits))) || fail(said))
        }
      }),
      { numRuns: 4 },
    )
  })
})
