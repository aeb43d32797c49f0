import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readJob } from '../../../src/cli/part-files.ts'
import { composeJob, type Job } from '../../../src/worksheet/compose/job.ts'
import { namesFor } from '../../../src/worksheet/compose/part-library.ts'
import { isNamed } from '../../../src/worksheet/index.ts'
import { JOBS_OF_VERSION_1, ofVersion1 } from '../schema/version-1.ts'
import { contradictionsIn, handfuls, together, wrongWith } from './contradictions.ts'
import { errorsOf, namesOf, PARTS, permutations } from './sets.ts'

const job = (name: string): Job => readJob(name) as Job

const SETS: readonly (readonly string[])[] = [
  ['flat-sheet', 'in-tiles', 'two-lamps', 'accept-light'],
  ['upright-original', 'glossy', 'exposure-ledger'],
  ['bound-volume', 'best-aperture', 'accept-colour', 'delivery'],
  ['flat-sheet', 'fixed-arms', 'accept-light'],
  ['rights-and-light', 'flat-sheet', 'two-lamps', 'flicker'],
  ['in-tiles', 'two-lamps', 'square-and-level', 'delivery'],
  ['phone-stand', 'two-lamps', 'square-and-level'],
  ['small-object', 'getting-closer', 'backdrop'],
  ['intake-quote', 'collection-run', 'flat-sheet', 'delivery'],
  ['transparencies', 'best-aperture', 'accept-light'],
]

describe('sets of jobs', { timeout: 600_000 }, () => {
  test('any handful of jobs and parts makes one sheet in every order, which never contradicts itself', () => {
    fc.assert(
      fc.property(handfuls, (names) => {
        expect(wrongWith(names), names.join(', ')).toEqual([])
      }),
      { numRuns: 30 },
    )
  })

  test.each(SETS)('%s, %s, %s and what follows make one sheet in every order', (...set) => {
    const [first, ...others] = permutations(set).map((order) => JSON.stringify(together(order).cells))
    for (const other of others) expect(other).toBe(first)
    expect(errorsOf(together(set))).toEqual([])
    expect(contradictionsIn(together(set))).toEqual([])
  })
})

test.each(JOBS_OF_VERSION_1)('every name of the sheet %s of version 1 is still valid', (name) => {
  const older = ofVersion1(name)
  const now = new Set(namesOf(composeJob(PARTS, job(name)).cells))
  const lost = older.cells
    .filter(isNamed)
    .filter((cell) => !now.has(cell.name) && namesFor(PARTS, cell.name, (one) => now.has(one)).length === 0)
  expect(lost.map((cell) => cell.name)).toEqual([])
})
