import { describe, expect, it, test } from 'vitest'
import { readJob, readParts } from '../../../src/cli/part-files.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { passes } from '../../../src/worksheet/advice/advise.ts'
import { offersFor } from '../../../src/worksheet/advice/offers.ts'
import { compose, type SetUp } from '../../../src/worksheet/compose/compose.ts'
import { composeJob, type Job, partsOfJob } from '../../../src/worksheet/compose/job.ts'
import { withParts } from '../../../src/worksheet/compose/recompose.ts'
import { Sheet } from '../../../src/worksheet/index.ts'

function jobWith(name: string, texts: Readonly<Record<string, string>>): Sheet {
  const worksheet = composeJob(readParts(), readJob(name) as Job)
  const cells = worksheet.cells.map((cell) =>
    cell.kind === 'given' && texts[cell.name] !== undefined ? { ...cell, value: texts[cell.name] as string } : cell,
  )
  return new Sheet({ ...worksheet, cells }, LIBRARY)
}

/** Flat sheet with a set-up more. */
function withSetUp(setUp: SetUp, texts: Readonly<Record<string, string>>): Sheet {
  const library = readParts()
  const parts = partsOfJob(readJob('flat-sheet') as Job)
  const { worksheet } = compose(library, { title: 'Two set-ups', parts, setUps: [setUp] })
  const cells = worksheet.cells.map((cell) =>
    cell.kind === 'given' && texts[cell.name] !== undefined ? { ...cell, value: texts[cell.name] as string } : cell,
  )
  return new Sheet({ ...worksheet, cells }, LIBRARY)
}

describe('parts that would help a later set-up', () => {
  const byHand = (...parts: readonly string[]) => parts.map((part) => ({ part, by: 'hand' as const }))
  const large = { original: '900 x 1300', wanted_sampling: '150' }
  const small = { original: '24 x 30', wanted_sampling: '1200' }
  // The same as for the first: a larger original in frames, a nearer one with tubes; common practice, no source.
  test.each([
    [
      'an overview that falls short of its sampling',
      { prefix: 'overview', title: 'Overview', parts: byHand('one-frame') },
      { ...large, overview_one_frame_sampling: '400' },
      'overview_sharp_enough',
      'tiles',
    ],
    [
      'a second set-up nearer than the lens focuses',
      { prefix: 'second', title: 'Second set-up', parts: byHand('one-frame', 'lens-alone') },
      { ...small, second_one_frame_sampling: '1200' },
      'second_lens_focuses',
      'closer',
    ],
  ] as const)('are offered for %s, in that set-up alone', (_, setUp, texts, check, part) => {
    const library = readParts()
    const sheet = withSetUp(setUp, texts)
    expect(sheet.checkState(sheet.named(check)?.id ?? '')).toBe('fail')
    const offers = offersFor(library, sheet)
    const own = offers.get(check) ?? []
    expect(own.map((one) => one.part)).toContain(part)
    for (const [name, found] of offers)
      for (const offer of found) {
        const isLater = name.startsWith(`${setUp.prefix}_`)
        expect(offer.setUp, name).toBe(isLater ? setUp.prefix : undefined)
        if (isLater) expect(offer.text).toMatch(new RegExp(`^${setUp.title}: [A-Z][^{}]+$`))
        const { change, cells } = withParts(library, sheet.worksheet, byHand(offer.part), offer.setUp)
        expect(change).toBeDefined()
        const after = sheet.trial(cells)
        const answered = after.named(name)
        if (answered) expect(after.checkState(answered.id), name).not.toBe('fail')
      }
  })
})

describe('parts that would help', () => {
  // An original larger than a frame at its sampling is photographed in overlapping frames; nearer than a lens focuses, on tubes
  // or with close-up lenses: common practice, no source.
  test.each([
    ['one frame falls short of the sampling', { original: '900 x 1300' }, 'sharp_enough', 'tiles'],
    ['the column is too short for one frame', { original: '900 x 1300' }, 'column_reaches', 'tiles'],
    ['the lens does not focus so close', { original: '24 x 30', wanted_sampling: '2400' }, 'lens_focuses', 'closer'],
  ] as const)('are offered where %s', (_, texts, check, part) => {
    expect(
      offersFor(readParts(), jobWith('flat-sheet', texts))
        .get(check)
        ?.map((one) => one.part),
    ).toContain(part)
  })

  it('answer the check once they are in the sheet, and never change what the original or the equipment is', () => {
    const library = readParts()
    for (const texts of [{}, { original: '900 x 1300' }, { original: '24 x 30', wanted_sampling: '2400' }]) {
      const sheet = jobWith('flat-sheet', texts)
      const offers = [...offersFor(library, sheet)]
      expect(offers.length).toBeGreaterThan(0)
      for (const [check, parts] of offers)
        for (const { part, text } of parts) {
          expect(text).toMatch(/^[A-Z][^{}]+$/)
          expect(['original', 'kit', 'price', 'care']).not.toContain(library.parts.get(part)?.role)
          const { change, cells } = withParts(library, sheet.worksheet, [{ part, by: 'hand' }])
          expect(change).toBeDefined()
          const after = sheet.trial(cells)
          const cell = after.named(check)
          if (cell) expect(after.checkState(cell.id)).not.toBe('fail')
        }
    }
  })

  it('say what pressing one does, with its figures', () => {
    const offers = offersFor(readParts(), jobWith('flat-sheet', { original: '900 x 1300' })).get('sharp_enough')
    expect(offers?.find(({ part }) => part === 'tiles')?.text).toMatch(/^Take it in \d+ frames$/)
  })

  it('are none where every check passes, or in a sheet that is not composed of parts', () => {
    const sheet = jobWith('flat-sheet', { wanted_sampling: '300' })
    const failing = sheet.cells.filter((cell) => cell.kind === 'check' && !passes(sheet.checkState(cell.id)))
    expect(failing).toEqual([])
    expect([...offersFor(readParts(), sheet)]).toEqual([])
    const { parts: _, ...own } = jobWith('flat-sheet', {}).worksheet
    expect([...offersFor(readParts(), new Sheet(own, LIBRARY))]).toEqual([])
  })
})
