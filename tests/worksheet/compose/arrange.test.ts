import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { readJob } from '../../../src/cli/part-files.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { arranged, type OlderJobs, olderJob, olderJobsIn } from '../../../src/worksheet/compose/arrange.ts'
import { composeJob, type Job, partsOfJob } from '../../../src/worksheet/compose/job.ts'
import { type Cell, type Given, isNamed, Sheet, type Worksheet } from '../../../src/worksheet/index.ts'
import older from '../../../templates/older/version-1.json'
import { JOBS } from '../../templates/open.ts'
import { given, result } from '../make.ts'
import { JOBS_OF_VERSION_1, ofVersion1 } from '../schema/version-1.ts'
import { PARTS } from './sets.ts'

const jobs = new Map(JOBS.map((name) => [name, readJob(name) as Job]))
const parts = new Map([...jobs].map(([name, job]) => [name, partsOfJob(job)]))
const OLDER: OlderJobs = older

/** An earlier version's sheet, arranged by parts as the page does it. */
function arrange(worksheet: Worksheet): Sheet {
  const sheet = new Sheet(worksheet, LIBRARY)
  const { change } = arranged(PARTS, worksheet, OLDER, parts)
  if (change) sheet.apply(change)
  return sheet
}
const givensOf = (cells: readonly Cell[]): Given[] => cells.filter((cell): cell is Given => cell.kind === 'given')

test('the jobs of version 1 are known by what their sheets hold', async () => {
  const known = {
    about: 'What tells the cells of the jobs of version 1, so that their sheets can be arranged by parts.',
    jobs: Object.fromEntries(JOBS_OF_VERSION_1.map((name) => [name, olderJob(ofVersion1(name))])),
  }
  await expect(`${JSON.stringify(known)}\n`).toMatchFileSnapshot('../../../templates/older/version-1.json')
})

describe.each(JOBS_OF_VERSION_1)('a sheet of version 1 of %s', (name) => {
  it('is known again, and once arranged has the parts and the cells of the job, with its own figures', () => {
    const before = ofVersion1(name)
    expect(olderJobsIn(before, OLDER)).toEqual([name])
    const sheet = arrange(before)
    expect(sheet.checkSummary.errors).toBe(0)
    const job = composeJob(PARTS, jobs.get(name) as Job)
    expect(sheet.worksheet.parts).toEqual(job.parts)
    const names = (cells: readonly Cell[]): string[] => cells.filter(isNamed).map((cell) => cell.name)
    expect(names(sheet.cells)).toEqual(names(job.cells))
    for (const { name: one, value, from } of givensOf(before.cells)) {
      const now = sheet.named(one)
      if (now?.kind !== 'given' || value === '') continue
      expect(now).toMatchObject({ value, from: { kind: 'example', text: value } })
      expect(from).toBeUndefined()
    }
    // It is one step of undo.
    sheet.undo()
    expect(sheet.worksheet).toBe(before)
    expect(olderJobsIn(arrange(before).worksheet, OLDER)).toEqual([])
  })

  it('keeps what was typed, measured and added, and every cell that an added one reads', () => {
    const before = ofVersion1(name)
    const readable = before.cells.filter(isNamed).map((cell) => cell.name)
    fc.assert(
      fc.property(
        fc.subarray(givensOf(before.cells).map(({ id }) => id)),
        fc.subarray(readable, { minLength: 1, maxLength: 3 }),
        (typed, read) => {
          const own = { ...result('mine', read.map((one) => `(${one})`).join(' and ')), id: 'mine' }
          const worksheet: Worksheet = {
            ...before,
            cells: [
              ...before.cells.map((cell) =>
                cell.kind === 'given' && typed.includes(cell.id) ? { ...cell, value: `${cell.value} ` } : cell,
              ),
              given('lens_of_mine', '3'),
              own,
            ],
          }
          const sheet = arrange(worksheet)
          expect(sheet.named('mine')).toMatchObject({ formula: own.formula })
          expect(sheet.named('lens_of_mine')).toMatchObject({ value: '3' })
          for (const one of read) {
            const there = sheet.named(one)
            const isAlias = PARTS.aliases.has(one)
            if (!there) expect(isAlias, one).toBe(false)
            expect(there, one).toBeDefined()
          }
          for (const cell of givensOf(before.cells)) {
            const now = sheet.named(cell.name)
            if (now?.kind !== 'given' || !typed.includes(cell.id) || cell.value.trim() === '') continue
            expect(now).toMatchObject({ value: `${cell.value} `, from: { kind: 'typed' } })
          }
        },
      ),
      { numRuns: 5, seed: 11 },
    )
  })
})

test('two jobs that were joined are known both, and become one sheet of their parts', () => {
  const [flat, accept] = [ofVersion1('flat-sheet'), ofVersion1('accept-light')]
  const names = new Set(flat.cells.filter(isNamed).map(({ name }) => name))
  const joined = {
    ...flat,
    cells: [
      ...flat.cells,
      ...accept.cells
        .filter((cell) => !isNamed(cell) || !names.has(cell.name))
        .map((cell) => ({ ...cell, id: `b_${cell.id}` })),
    ],
  }
  expect(olderJobsIn(joined, OLDER)).toEqual(['flat-sheet', 'accept-light'])
  const sheet = arrange(joined)
  expect(sheet.checkSummary.errors).toBe(0)
  expect(sheet.named('carriage')).toBeDefined()
  expect(sheet.named('measured_spread')).toBeDefined()
})

test('a sheet that the user made is not offered to be arranged', () => {
  const { cells, ...rest } = ofVersion1('flat-sheet')
  expect(olderJobsIn({ ...rest, cells: cells.slice(0, 12) }, OLDER)).toEqual([])
  expect(olderJobsIn({ ...rest, cells: [given('a', '1'), result('b', 'a')] }, OLDER)).toEqual([])
})
