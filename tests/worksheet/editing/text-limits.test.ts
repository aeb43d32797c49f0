import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import {
  type Change,
  ChangeRefused,
  fitted,
  readClipping,
  readDocument,
  Sheet,
  type Worksheet,
  writeDocument,
} from '../../../src/worksheet/index.ts'
import { check, given, note, result, sheetOf } from '../make.ts'

const LONG = 'x'.repeat(20_001)
const cells = () => [
  given('a', '1'),
  result('b', 'a'),
  check('c', 'b > 0'),
  note('d', 'A note'),
  { kind: 'table' as const, id: 't', name: 't', columns: [{ name: 'n', entry: 'text' as const }], rows: [['x']] },
]

describe('a text longer than a sheet takes is refused where it is typed', () => {
  const changes: Readonly<Record<string, Change>> = {
    'the title': { do: 'title', title: 'x'.repeat(501) },
    'the job': { do: 'job', job: LONG },
    'a given': { do: 'replace', cell: given('a', LONG) },
    'a hint': { do: 'replace', cell: given('a', '1', { hint: LONG }) },
    'a formula': { do: 'replace', cell: result('b', LONG) },
    'a message': { do: 'replace', cell: check('c', 'b > 0', { message: LONG }) },
    'a field of a table': { do: 'replace', cell: { ...cells()[4], rows: [[LONG]] } as never },
    'rows of a table': { do: 'replace', cell: { ...cells()[4], rows: Array(20_001).fill(['x']) } as never },
    'one of several': {
      do: 'several',
      changes: [
        { do: 'job', job: 'x' },
        { do: 'replace', cell: note('d', LONG) },
      ],
    },
    'a new cell': { do: 'add', cell: note('e', LONG), at: 0 },
    'cells set in': { do: 'insert', cells: [note('e', LONG)], at: 0 },
  }
  test.each(Object.entries(changes))('%s', (_, change) => {
    const sheet = sheetOf(cells())
    const before = sheet.worksheet
    expect(() => sheet.apply(change)).toThrow(ChangeRefused)
    expect(() => sheet.apply(change)).toThrow(/at most (500|20\u202f000) fit/)
    expect(sheet.worksheet).toBe(before)
    expect(sheet.canUndo).toBe(false)
  })

  it('also where a longer name would make formulas too long, and where cells are arranged anew', () => {
    const long = Array(500).fill('a').join(' + ')
    const sheet = sheetOf([given('a', '1'), result('b', long)])
    const before = sheet.worksheet
    expect(() => sheet.apply({ do: 'rename', id: 'a', name: `a${'b'.repeat(55)}` })).toThrow(/at most 20.000 fit/)
    const arranged: Change = { do: 'arrange', cells: [note('n', LONG)], parts: [], given: {} }
    expect(() => sheet.apply(arranged)).toThrow(/at most 20.000 fit/)
    expect(sheet.worksheet).toBe(before)
    expect(sheet.canUndo).toBe(false)
  })

  it('pasted as a line of cells, such as a number of 30,000 digits', () => {
    const sheet = sheetOf(cells())
    const before = sheet.worksheet
    for (const line of [`e = ${'9'.repeat(30_000)}`, `e = ${'9 + '.repeat(8_000)}9`]) {
      const pasted = fitted(readClipping(line), sheet.cells, () => 'pasted')
      expect(() => sheet.apply({ do: 'insert', cells: pasted, at: 0 })).toThrow(/at most 20.000 fit/)
    }
    expect(sheet.worksheet).toBe(before)
  })

  it('takes a text of just the length', () => {
    const sheet = sheetOf(cells())
    sheet.apply({ do: 'job', job: 'x'.repeat(20_000) })
    sheet.apply({ do: 'title', title: 'x'.repeat(500) })
    expect(sheet.worksheet.title).toHaveLength(500)
  })

  it('lets one that is too long already be shortened, and its cell be changed elsewhere', () => {
    const sheet = sheetOf([given('a', LONG)])
    sheet.apply({ do: 'replace', cell: given('a', LONG, { hint: 'a hint' }) })
    sheet.apply({ do: 'replace', cell: given('a', LONG.slice(1), { hint: 'a hint' }) })
    expect(() => sheet.apply({ do: 'replace', cell: given('a', LONG, { hint: LONG }) })).toThrow(ChangeRefused)
  })
})

test('whatever can be typed can be read again', () => {
  const texts = fc.oneof(
    fc.string(),
    fc.integer({ min: 0, max: 40_000 }).map((n) => 'x'.repeat(n)),
  )
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.nat({ max: 4 }), texts), { maxLength: 6 }), (typed) => {
      const sheet = sheetOf(cells())
      for (const [where, text] of typed) {
        const changes: Change[] = [
          { do: 'title', title: text },
          { do: 'job', job: text },
          { do: 'replace', cell: given('a', text) },
          { do: 'replace', cell: result('b', text) },
          { do: 'replace', cell: { ...cells()[4], rows: [[text]] } as never },
        ]
        try {
          sheet.apply(changes[where] as Change)
        } catch (error) {
          if (!(error instanceof ChangeRefused)) throw error
        }
      }
      expect(readDocument(writeDocument(sheet.worksheet))).toEqual(sheet.worksheet)
    }),
    { numRuns: 50 },
  )
})

describe('a sheet saved with a longer text', () => {
  const old = (more: object): string =>
    JSON.stringify({ format: 'evenfield-worksheet', version: 1, title: 'Old', cells: [], ...more })

  test.each([
    ['in its title', { title: 'x'.repeat(501) }],
    ['in its job', { job: LONG }],
    ['in a given', { cells: [{ kind: 'given', id: 'a', name: 'a', value: LONG }] }],
  ])('%s opens all the same', (_, more) => {
    const read: Worksheet = readDocument(old(more))
    expect(read).toMatchObject(more)
  })
})

test('a file with a number of 30,000 digits opens, and says in words that it cannot be read', () => {
  const cells = [
    { kind: 'given', id: 'a', name: 'a', value: '9'.repeat(30_000) },
    { kind: 'result', id: 'b', name: 'b', formula: '9'.repeat(30_000) },
  ]
  const sheet = new Sheet(
    readDocument(JSON.stringify({ format: 'evenfield-worksheet', version: 2, title: '', cells })),
    LIBRARY,
  )
  for (const id of ['a', 'b']) {
    const outcome = sheet.outcome(id)
    const message = outcome.state === 'error' ? (outcome.diagnostics[0]?.message ?? '') : outcome.state
    expect(message).toMatch(/characters/)
    expect(message.length).toBeLessThan(300)
  }
})

test('records by name take every name a cell may have', () => {
  const names = ['constructor', 'prototype', 'toString', 'valueOf', 'hasOwnProperty']
  const values = Object.fromEntries(names.map((name) => [name, '2']))
  const document = readDocument(
    JSON.stringify({
      format: 'evenfield-worksheet',
      version: 2,
      title: '',
      cells: [
        ...names.map((name) => ({ kind: 'given', id: name, name, value: '1' })),
        { kind: 'variants', id: 'v', sets: [{ title: 'A', values }], results: [] },
        { kind: 'drawing', id: 'd', drawing: 'patches', from: values },
      ],
    }),
  )
  expect(document.cells.at(-2)).toMatchObject({ sets: [{ values }] })
  expect(document.cells.at(-1)).toMatchObject({ from: values })
  const bad = { title: '', cells: [{ kind: 'variants', id: 'v', sets: [{ title: '', values: { constructor: 1 } }] }] }
  expect(() => readDocument(JSON.stringify({ format: 'evenfield-worksheet', version: 2, ...bad }))).toThrow()
})
