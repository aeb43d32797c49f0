import fc from 'fast-check'
import { afterAll, describe, expect, test } from 'vitest'
import { asked, report } from '../endurance/report.ts'
import { clamp, rounded } from './givens.ts'
import { JOBS as FLAT_JOBS } from './jobs.ts'
import { NEAR_JOBS } from './phone-object-gloss.ts'
import { ROOM_JOBS } from './rooms.ts'
import { filled, has } from './trace.ts'

/**
 * Each check of the jobs that form a picture, against a photograph traced without the sheet's formulas: what passes would
 * succeed, and what fails would fail. Limits are put close to what a sheet computes, so that about half of them are met.
 */
const JOBS = [...FLAT_JOBS, ...NEAR_JOBS, ...ROOM_JOBS]
const RUNS = Math.ceil(asked('PHOTOGRAPHS', 20 * JOBS.length) / JOBS.length)
const SEED = process.env.PHOTOGRAPHS_SEED === undefined ? {} : { seed: Number(process.env.PHOTOGRAPHS_SEED) }

let photographs = 0
let judged = 0
afterAll(() =>
  report('photographs', { seed: Number(process.env.PHOTOGRAPHS_SEED ?? 0), photographs, checks_judged: judged }),
)

describe.each(JOBS)('the checks of $name', { timeout: 3_600_000 }, ({ name, parts, judges, texts, aims, trace }) => {
  test('pass where the photograph succeeds, and fail where it fails', () => {
    const met = new Map<string, Set<string>>()
    fc.assert(
      fc.property(
        texts,
        fc.array(fc.double({ min: 0.75, max: 1.3, noNaN: true }), { minLength: 8, maxLength: 8 }),
        (own, by) => {
          const first = filled(name, own, parts)
          const aimed: Record<string, string> = { ...own }
          for (const [
            at,
            [given, result, unit, scale, [least, most] = [0, Number.POSITIVE_INFINITY]],
          ] of aims.entries()) {
            const outcome = first.sheet.outcome(first.sheet.named(result)?.id ?? '')
            if (outcome.state === 'value' && typeof outcome.value === 'number' && outcome.value > 0)
              aimed[given] = `${rounded(clamp(outcome.value * scale * (by[at] as number), least, most))} ${unit}`.trim()
          }
          photographs++
          const sheet = filled(name, aimed, parts)
          for (const [check, traced] of Object.entries(trace(sheet))) {
            const { ifPassed, ifFailed } = typeof traced === 'number' ? { ifPassed: traced, ifFailed: traced } : traced
            if (!has(sheet, check)) continue
            const state = sheet.state(check)
            judged++
            met.set(check, (met.get(check) ?? new Set()).add(state))
            const said = `${check} is ${state}: ${sheet.message(check)} ${JSON.stringify(aimed)}`
            if (state === 'pass' || state === 'marginal') expect(ifPassed, said).toBeLessThanOrEqual(1.01)
            if (state === 'fail') expect(ifFailed, said).toBeGreaterThanOrEqual(0.99)
          }
        },
      ),
      { numRuns: RUNS, ...SEED },
    )
    // What is judged by a measurement alone waits, whatever is computed.
    const failed = [...met].flatMap(([check, states]) => (states.has('fail') ? [check] : []))
    expect(failed.sort()).toEqual([...judges].sort())
  })
})
