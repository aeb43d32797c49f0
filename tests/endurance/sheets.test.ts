import fc from 'fast-check'
import { expect, test } from 'vitest'
import { JOBS } from '../templates/open.ts'
import { handfuls, wrongWith } from '../worksheet/compose/contradictions.ts'
import { asked, report } from './report.ts'

const SHEETS = asked('SHEETS', 10)
const SEED = asked('SHEETS_SEED', 5)

const pairs = JOBS.flatMap((a, at) => JOBS.slice(at + 1).map((b) => [a, b]))
const triples = pairs.flatMap(([a = '', b = '']) => JOBS.slice(JOBS.indexOf(b) + 1).map((c) => [a, b, c]))

test(`${SHEETS} sheets of jobs and parts are one in every order, and never contradict themselves`, () => {
  let ran = 0
  let wrong = 0
  fc.assert(
    fc.property(fc.oneof(fc.constantFrom(...pairs, ...triples), handfuls), (names) => {
      ran++
      const found = wrongWith(names)
      if (found.length > 0) wrong++
      expect(found, names.join(', ')).toEqual([])
    }),
    { numRuns: SHEETS, seed: SEED },
  )
  report('sheets', { seed: SEED, sheets: ran, wrong })
  expect(ran).toBe(SHEETS)
}, 7_200_000)
