import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Band, bandsOf, freely, inMargin, spreadsOf, underColumns } from '../../../src/app/open/bands.ts'
import { sectionsOf } from '../../../src/app/open/sections.ts'
import type { Cell } from '../../../src/worksheet/index.ts'

const heading = (id: string): Cell => ({ kind: 'note', id, role: 'heading', text: id })
const given = (id: string): Cell => ({ kind: 'given', id, name: id, value: '' })
const result = (id: string): Cell => ({ kind: 'result', id, name: id, formula: '1' })
const drawing = (id: string): Cell => ({ kind: 'drawing', id, drawing: 'set-up', from: {} })
const table = (id: string): Cell => ({ kind: 'table', id, name: id, columns: [], rows: [] })
const steps = (id: string): Cell => ({ kind: 'steps', id, steps: [] })
const several = (n: number, make: (id: string) => Cell, id: string): Cell[] =>
  Array.from({ length: n }, (_, at) => make(`${id}${at}`))

const idsOf = (cells: readonly Cell[]): string[][] =>
  bandsOf(sectionsOf(cells)).map(({ sections }) => sections.map(({ section }) => section.id))

test('what one gives in one section and what follows in the next share a band', () => {
  expect(idsOf([heading('A'), ...several(5, given, 'a'), heading('B'), ...several(5, result, 'b')])).toEqual([
    ['A', 'B'],
  ])
})

test('sections that would be taller than a screen together stay apart', () => {
  expect(idsOf([heading('A'), ...several(14, given, 'a'), heading('B'), ...several(14, given, 'b')])).toEqual([
    ['A'],
    ['B'],
  ])
})

test('sections of different set-ups stay apart', () => {
  const inSetUp = (id: string, set_up?: string): Cell => ({ ...heading(id), ...(set_up ? { set_up } : {}) }) as Cell
  const cells = ['', 'raking', 'raking', 'ultraviolet'].flatMap((setUp, at) => [
    inSetUp(`S${at}`, setUp),
    given(`g${at}`),
    result(`r${at}`),
  ])
  expect(idsOf(cells)).toEqual([['S0'], ['S1', 'S2'], ['S3']])
})

test('a table has its band alone, and steps come last in theirs', () => {
  expect(idsOf([heading('A'), given('a'), heading('B'), table('b'), heading('C'), given('c')])).toEqual([
    ['A'],
    ['B'],
    ['C'],
  ])
  expect(idsOf([heading('A'), given('a'), heading('B'), steps('b'), heading('C'), given('c')])).toEqual([
    ['A', 'B'],
    ['C'],
  ])
})

test('drawings taller than their band go on beside the next, and begin beside the one before', () => {
  const cells = [
    heading('A'),
    ...several(15, given, 'a'),
    heading('B'),
    ...several(15, given, 'b'),
    ...several(3, drawing, 'd'),
    heading('C'),
    ...several(15, given, 'c'),
    heading('D'),
    ...several(15, given, 'e'),
  ]
  const spreads = spreadsOf(bandsOf(sectionsOf(cells)))
  expect(spreads.map((bands) => bands.flatMap(({ sections }) => sections.map(({ section }) => section.id)))).toEqual([
    ['A'],
    ['B', 'C', 'D'],
  ])
  const [, drawn = []] = spreads
  expect(inMargin(drawn, 3)).toBe(3)
  expect(inMargin(drawn, 12)).toBeLessThan(12)
})

test('each note goes below the column that is shorter by then', () => {
  const note = (id: string): Cell => ({ kind: 'note', id, text: 'Words. '.repeat(60) })
  const [band] = bandsOf(
    sectionsOf([heading('A'), ...several(8, given, 'a'), ...several(4, result, 'b'), ...several(4, note, 'n')]),
  )
  const { notes = [], notesFollowing = [] } = band?.sections[0] ?? {}
  expect([...notes, ...notesFollowing].map(({ id }) => id).sort()).toEqual(['n0', 'n1', 'n2', 'n3'])
  expect(notesFollowing[0]?.id).toBe('n0')
  expect(notes.length).toBeGreaterThan(0)
  const [gives = 0, follows = 0] = band?.columns ?? []
  expect(Math.abs(gives - follows)).toBeLessThan(200)
})

test('a drawing goes under the column that is shorter by then', () => {
  const [band] = bandsOf(sectionsOf([heading('A'), ...several(12, given, 'a'), ...several(3, drawing, 'd')]))
  if (!band) throw new Error('There is one band.')
  const [gives, follows] = underColumns(band, band.drawings)
  expect(gives.map(({ id }) => id)).toEqual(['d2'])
  expect(follows.map(({ id }) => id)).toEqual(['d0', 'd1'])
})

test('every cell is in exactly one band, in the order of the sheet, whatever the sheet', () => {
  const cell = fc.constantFrom(heading, given, result, drawing, table, steps)
  fc.assert(
    fc.property(fc.array(cell, { maxLength: 60 }), (kinds) => {
      const cells = kinds.map((make, at) => make(`c${at}`))
      const sections = sectionsOf(cells)
      const bands = bandsOf(sections)
      expect(bands.flatMap((band) => band.sections.map(({ section }) => section))).toEqual(sections)
      expect(spreadsOf(bands).flat()).toEqual(bands)
      const shown = bands.flatMap((band) => [
        ...band.sections.flatMap((one) => [
          ...(one.section.heading ? [one.section.heading] : []),
          ...one.givens,
          ...one.fineGivens,
          ...one.notes,
          ...one.results,
          ...one.fineResults,
          ...one.checks,
          ...one.wide,
        ]),
        ...band.drawings,
      ])
      expect(shown.map(({ id }) => id).sort()).toEqual(cells.map(({ id }) => id).sort())
    }),
  )
})

test('beside no drawing the taller of what one gives and what follows takes two columns, and notes go where room is left', () => {
  const note = (id: string): Cell => ({ kind: 'note', id, text: 'Words. '.repeat(60) })
  const [much] = bandsOf(sectionsOf([heading('A'), ...several(12, given, 'a'), ...several(3, result, 'b'), note('n')]))
  expect(freely(much as Band)[1]).toBe('two-give')
  const [little] = bandsOf(sectionsOf([heading('A'), ...several(3, given, 'a'), ...several(12, result, 'b')]))
  expect(freely(little as Band)[1]).toBe('two-follow')
  fc.assert(
    fc.property(fc.nat(14), fc.nat(14), fc.nat(5), (givens, results, notes) => {
      const cells = [
        heading('A'),
        given('a'),
        ...several(givens, given, 'g'),
        ...several(results, result, 'r'),
        ...several(notes, note, 'n'),
      ]
      const [band] = bandsOf(sectionsOf(cells)) as [Band]
      const [free] = freely(band)
      expect(free.height).toBeLessThanOrEqual(band.height)
      const placed = free.sections.flatMap((one) => [...one.notes, ...one.notesFollowing].map(({ id }) => id))
      expect(placed.sort()).toEqual(several(notes, note, 'n').map(({ id }) => id))
    }),
  )
})
