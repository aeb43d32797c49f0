import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { isDue, named, type Revision, revisionsToDrop } from '../../../src/storage/store/revision.ts'

const MINUTE = 60_000
const HOUR = 60 * MINUTE
const DAY = 24 * HOUR
/** On the stroke of a week, so that hours and days begin where one expects. */
const START = 7 * DAY * 3000

const made = (at: number, more: Partial<Revision> = {}): Revision => ({ sheet: 'a', at, ...more })
const left = (revisions: readonly Revision[], now: number): readonly Revision[] => {
  const gone = new Set(revisionsToDrop(revisions, now))
  return revisions.filter((one) => !gone.has(one))
}
const times = (revisions: readonly Revision[]): number[] => revisions.map(({ at }) => at - START)
/** One every so often from the start on. */
const every = (span: number, count: number): Revision[] =>
  Array.from({ length: count }, (_, at) => made(START + at * span))

describe('the past of a sheet', () => {
  it('keeps the last of every minute of the last hour', () => {
    const [first, second, third] = [made(START), made(START + 20_000), made(START + MINUTE)]
    expect(left([first, second, third], START + 2 * MINUTE)).toEqual([second, third])
  })

  it('keeps the last of every hour once the hour is past for an hour', () => {
    const revisions = every(10 * MINUTE, 18)
    expect(times(left(revisions, START + 3 * HOUR))).toEqual(
      [50, 110, 120, 130, 140, 150, 160, 170].map((n) => n * MINUTE),
    )
  })

  it('keeps the last of every day after a day, of every week after a month', () => {
    const revisions = every(HOUR, 24 * 60)
    const saved = times(left(revisions, START + 60 * DAY))
    const days = saved.filter((at) => at % DAY === 23 * HOUR)
    expect(saved.slice(0, 4)).toEqual([7, 14, 21, 28].map((day) => day * DAY - HOUR))
    expect(days.length).toBe(4 + 32)
    expect(saved.length).toBe(35 + 24)
  })

  it('never lets go of what has a name', () => {
    const revisions = [made(START, { name: 'As agreed' }), made(START + 1), made(START + 2)]
    expect(left(revisions, START + 400 * DAY)).toEqual([revisions[0], revisions[2]])
  })

  it('keeps what was saved before a restore as long as minutes are saved', () => {
    const revisions = [made(START, { why: 'before a restore' }), made(START + 1)]
    expect(left(revisions, START + MINUTE)).toEqual(revisions)
    expect(left(revisions, START + DAY)).toEqual([revisions[1]])
  })

  it('takes in a new one only when the minute has turned', () => {
    expect(isDue(START, START + 59_999)).toBe(false)
    expect(isDue(START + 59_999, START + MINUTE)).toBe(true)
  })

  it('loses a name that is taken away', () => {
    expect(named(made(START, { name: 'a' }), '  ')).toEqual(made(START))
    expect(named(made(START), ' As agreed ')).toEqual(made(START, { name: 'As agreed' }))
  })
})

const pasts = fc
  .uniqueArray(fc.tuple(fc.integer({ min: 0, max: 90 * DAY }), fc.integer({ min: 0, max: 19 })), {
    selector: ([at]) => at,
    maxLength: 200,
  })
  .map((list) =>
    list.map(([at, luck]) => made(START + at, luck === 0 ? { name: 'n' } : luck === 1 ? { why: 'w' } : {})),
  )
const laters = fc.integer({ min: 0, max: 60 * DAY })

test('thinning often gives the same as thinning once', () => {
  fc.assert(
    fc.property(pasts, laters, laters, (revisions, first, more) => {
      const now = START + 90 * DAY + first
      const later = now + more
      expect(left(left(revisions, now), later)).toEqual(left(revisions, later))
    }),
    { numRuns: 500 },
  )
})

test('the latest stays, and the past stays short', () => {
  fc.assert(
    fc.property(pasts, laters, (revisions, after) => {
      const now = START + 90 * DAY + after
      const saved = left(revisions, now)
      const latest = Math.max(...revisions.map(({ at }) => at))
      if (revisions.length > 0) expect(saved.some(({ at }) => at === latest)).toBe(true)
    }),
  )
  // Someone who works day and night for two years, a change a minute.
  const years = every(7 * MINUTE, Math.floor((730 * DAY) / (7 * MINUTE)))
  expect(left(years, START + 730 * DAY).length).toBeLessThan(120 + 48 + 38 + 105)
})
