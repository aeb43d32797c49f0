import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readJob } from '../../../src/cli/part-files.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { choose } from '../../../src/worksheet/compose/choose-parts.ts'
import { compose } from '../../../src/worksheet/compose/compose.ts'
import { figureOf } from '../../../src/worksheet/compose/figures.ts'
import { fromAnswers } from '../../../src/worksheet/compose/from-answers.ts'
import { type Job, partsOfJob } from '../../../src/worksheet/compose/job.ts'
import { partsBeside, partsOf } from '../../../src/worksheet/compose/recompose.ts'
import type { Filled } from '../../../src/worksheet/compose/sections.ts'
import { Sheet, type Worksheet } from '../../../src/worksheet/index.ts'
import { contradictionsIn } from './contradictions.ts'
import { errorsOf, namesOf, PARTS, set } from './sets.ts'

const open = (worksheet: Worksheet) => new Sheet(worksheet, LIBRARY)
/** A piece is chosen with its figures: a name alone is an error. */
const PIECES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  phone: { sensor: '9.8 x 7.3', sensor_pixels: '8064 x 6048', focal: '6.9', aperture: 'f/1.8', nearest: '120' },
}
const typed = (texts: Readonly<Record<string, string>>): ReadonlyMap<string, Filled> =>
  new Map(
    Object.entries(texts).map(([name, value]) => {
      const piece = PIECES[name]
      return [name, { value, from: 'typed', ...(piece ? { piece } : {}) }]
    }),
  )
const answered = (kind: string | undefined, texts: Readonly<Record<string, string>> = {}) =>
  fromAnswers(PARTS, { ...(kind === undefined ? {} : { kind }), byPhone: 'phone' in texts, givens: typed(texts) }, open)
const winners = (worksheet: Worksheet): string[] => choose(PARTS, partsOf(worksheet)).parts.map(({ id }) => id)

const FULL_FRAME = { sensor: '36 x 24', sensor_pixels: '6000 x 4000', focal: '60', lens_greatest: '1:1' }

describe('which parts answers lead to', () => {
  const cases: readonly (readonly [
    string,
    string | undefined,
    Record<string, string>,
    readonly string[],
    readonly string[],
  ])[] = [
    [
      'nothing known',
      undefined,
      {},
      ['sheet', 'camera', 'one-frame', 'lens-alone', 'column', 'pair', 'lamps-clear'],
      [],
    ],
    [
      'a sheet one frame takes',
      'loose',
      { original: '420 x 297', wanted_sampling: '300', ...FULL_FRAME },
      ['one-frame', 'lens-alone', 'lamps-clear'],
      [],
    ],
    [
      'a sheet of the same size at more',
      'loose',
      { original: '420 x 297', wanted_sampling: '400', ...FULL_FRAME },
      ['tiles', 'lens-alone', 'joined'],
      ['tiles'],
    ],
    ['a sheet whose sampling is not known', 'loose', { original: '2000 x 1500', ...FULL_FRAME }, ['one-frame'], []],
    ['a varnished sheet', 'loose', { glossy: 'yes' }, ['reflections', 'one-frame'], ['reflections']],
    ['a matt sheet', 'loose', { glossy: 'no' }, ['lamps-clear'], []],
    [
      'a stamp, by a lens that reaches',
      'loose',
      { original: '24 x 30', wanted_sampling: '2400', ...FULL_FRAME },
      ['one-frame', 'lens-alone', 'barrel-clear'],
      ['barrel-clear'],
    ],
    [
      'a stamp, by a lens that does not',
      'loose',
      { original: '24 x 30', wanted_sampling: '2400', ...FULL_FRAME, lens_greatest: '1:2' },
      ['one-frame', 'closer', 'barrel-clear'],
      ['closer', 'barrel-clear'],
    ],
    ['a book', 'bound', {}, ['volume', 'choosing', 'volume-pages'], []],
    ['a painting behind glass', 'framed', { glossy: 'yes' }, ['framed', 'easel', 'reflections'], ['reflections']],
    [
      'a slide',
      'film',
      { film_format: '6x7', wanted_sampling: '1500', ...FULL_FRAME },
      ['film', 'panel', 'panel-exposure', 'one-frame'],
      [],
    ],
    ['a slide said to be glossy: the panel leaves no glare to judge', 'film', { glossy: 'yes' }, ['film', 'panel'], []],
    ['a find', 'solid', {}, ['object', 'one-lamp', 'in-print'], []],
    ['a list', 'list', {}, ['run', 'in-hand', 'camera'], []],
    ['a phone', 'loose', { phone: 'A phone' }, ['phone', 'sheet'], []],
  ]
  test.each(cases)('%s', (_, kind, texts, there, chosen) => {
    const { worksheet, chosen: reasons } = answered(kind, texts)
    const parts = winners(worksheet)
    for (const part of there) expect(parts).toContain(part)
    expect(reasons.map(({ part }) => part)).toEqual(chosen)
    for (const { why } of reasons) expect(why).toMatch(/^[^{}]+\.$/)
    expect(errorsOf(worksheet)).toEqual([])
  })

  test('why is said with the figures that decided', () => {
    const { chosen } = answered('loose', { original: '420 x 297', wanted_sampling: '400', ...FULL_FRAME })
    expect(chosen).toEqual([{ part: 'tiles', why: 'One frame gives 321 ppi of the 400 ppi required.' }])
  })

  test('tubes where there are tubes, a close-up lens where there is none, and nothing where neither is known', () => {
    const small = { original: '24 x 30', wanted_sampling: '2400', ...FULL_FRAME, lens_greatest: '1:8' }
    const way = (more: Record<string, string>) =>
      answered('loose', { ...small, ...more }).worksheet.cells.find(
        (cell) => 'name' in cell && cell.name === 'closer_by',
      )
    expect(way({ tubes: '20' })).toMatchObject({ value: 'tubes' })
    expect(way({ powers: '10' })).toMatchObject({ value: 'close-up lens' })
    expect(way({})).toMatchObject({ value: '' })
    expect(way({ tubes: '20', closer_by: 'close-up lens' })).toMatchObject({ value: 'close-up lens' })
  })

  test('a border and an overlap in proportion to a small original', () => {
    const { sheet } = answered('loose', { original: '24 x 30', wanted_sampling: '2400', ...FULL_FRAME })
    expect(figureOf(sheet, 'border')).toBe('2 mm')
    // A frame at 2400 ppi is 4000 px, 42.3 mm, on its short side.
    expect(figureOf(sheet, 'overlap')).toBe('10 mm')
    expect(figureOf(answered('loose', { original: '24 x 30', border: '5' }).sheet, 'border')).toBe('5 mm')
  })

  test('the parts of a kind are those of a job, and more', () => {
    const jobs: Record<string, string> = {
      loose: 'flat-sheet',
      bound: 'bound-volume',
      framed: 'upright-original',
      film: 'transparencies',
      solid: 'small-object',
    }
    for (const { kind, parts, lead } of PARTS.choosing.kinds) {
      const job = jobs[kind]
      if (job === undefined) continue
      for (const one of partsOfJob(readJob(job) as Job)) {
        expect(parts, kind).toContain(one.part)
        if (one.by === 'lead') expect(lead, kind).toBe(one.part)
      }
    }
  })
})

const TEXTS: Readonly<Record<string, readonly string[]>> = {
  original: ['24 x 30', '420 x 297', '1300 x 900', '12 m x 3 m', 'nonsense'],
  film_format: ['135', '6x7', '4x5 in'],
  film_kind: ['slide', 'colour negative'],
  taken: ['one page at a time', 'the whole opening'],
  leaves: ['300'],
  block_thickness: ['45'],
  unevenness: ['0', '3'],
  original_thickness: ['0', '25'],
  object_top: ['18'],
  outline_height: ['6'],
  glossy: ['yes', 'no'],
  wanted_sampling: ['300', '2400', '4000'],
  print_scale: ['1:1', '2:1'],
  print_sampling: ['300'],
  sensor: ['36 x 24', '23.5 x 15.6'],
  sensor_pixels: ['6000 x 4000', '14204 x 10652'],
  focal: ['35', '60', '100'],
  lens_greatest: ['1:1', '1:8'],
  tubes: ['20', '12, 20, 36'],
  powers: ['2', '4, 10'],
  phone: ['A phone'],
  column_reach: ['900', '1200'],
}

const anyAnswers: fc.Arbitrary<{ kind: string | undefined; texts: [string, string][] }> = fc.record({
  kind: fc.option(fc.constantFrom(...PARTS.choosing.kinds.map(({ kind }) => kind)), { nil: undefined }),
  texts: fc
    .subarray(Object.keys(TEXTS))
    .chain((names) =>
      fc.tuple(
        ...names.map((name) =>
          fc.constantFrom(...(TEXTS[name] as readonly string[])).map((text): [string, string] => [name, text]),
        ),
      ),
    ),
})

test('any answers make one sheet, in any order, that does not contradict itself', { timeout: 300_000 }, () => {
  fc.assert(
    fc.property(anyAnswers, ({ kind, texts }) => {
      const sheetOf = (list: readonly [string, string][]) => answered(kind, Object.fromEntries(list))
      const { worksheet, chosen } = sheetOf(texts)
      expect(JSON.stringify(sheetOf([...texts].reverse()).worksheet)).toBe(JSON.stringify(worksheet))
      const names = namesOf(worksheet.cells)
      expect(names).toEqual([...new Set(names)])
      expect(contradictionsIn(worksheet)).toEqual([])
      // What could not be read is in error where it was typed, and nowhere else.
      const typedWrongly = texts.some(([, text]) => text === 'nonsense')
      if (!typedWrongly) expect(errorsOf(worksheet)).toEqual([])
      // What was answered is in the sheet as it was typed, wherever the sheet asks for it.
      for (const [name, text] of texts) {
        const cell = worksheet.cells.find((one) => one.kind === 'given' && one.name === name)
        if (cell?.kind === 'given') expect(cell).toMatchObject({ value: text, from: { kind: 'typed' } })
      }
      // No example: every other given is empty, or has a usual value.
      for (const cell of worksheet.cells)
        if (cell.kind === 'given' && cell.value !== '') expect(['typed', 'usual']).toContain(cell.from?.kind)
      for (const { part } of chosen) expect(winners(worksheet)).toContain(part)
    }),
    { numRuns: 40 },
  )
})

describe('several originals alike', () => {
  test('are counted beside the one whose size is asked, of every kind without a count of its own', () => {
    for (const { kind } of PARTS.choosing.kinds) {
      const answers = { kind, several: true, givens: typed({ original: '420 x 297', items_in: '3', ...FULL_FRAME }) }
      const { worksheet } = fromAnswers(PARTS, answers, open)
      const counts = winners(worksheet).filter((id) => PARTS.parts.get(id)?.role === 'count')
      expect(counts, kind).toEqual([kind === 'list' ? 'run' : kind === 'bound' ? 'volume-pages' : 'alike'])
      expect(errorsOf(worksheet)).toEqual([])
      if (counts[0] === 'alike')
        expect(worksheet.cells).toContainEqual(expect.objectContaining({ name: 'items_in', value: '3' }))
    }
  })

  test('a job by lots added to a sheet with an original counts them alike; beside a list or alone it has lots', () => {
    const added = partsOfJob(readJob('intake-quote') as Job)
    const beside = (parts: readonly string[]) =>
      partsBeside(PARTS, compose(PARTS, { title: 'A sheet', parts: set(...parts) }).worksheet, added).map(
        ({ part }) => part,
      )
    expect(beside(['sheet', 'camera', 'one-frame'])).toEqual(['alike', 'disks', 'quote'])
    expect(beside(['framed', 'camera', 'one-frame'])).toEqual(['alike', 'disks', 'quote'])
    expect(beside(['camera', 'pair'])).toEqual(['lots', 'disks', 'quote'])
  })
})
