import { describe, expect, test } from 'vitest'
import { handOverPage } from '../../src/app/paper/hand-over.ts'
import type { TableCell } from '../../src/worksheet/index.ts'
import { readTable, TableError } from '../../src/worksheet/table/csv.ts'
import { matchTable, takeTable } from '../../src/worksheet/table/match-import.ts'
import { sheetOf } from '../worksheet/make.ts'
import { measured, refuseMarkup, refusePollution, useTable } from './exercise.ts'
import { PAYLOADS } from './generate.ts'

/** Of the processor: ten million signs are read through once. */
const LONGEST_MS = 5_000

const empty: TableCell = { kind: 'table', id: 's', name: 'originals', columns: [], rows: [] }
const originals: TableCell = {
  ...empty,
  columns: [
    { name: 'title', entry: 'text' },
    { name: 'width', unit: 'mm', foot: [{ figure: 'sum' }] },
    { name: 'kind', entry: 'choice', options: ['map'] },
    { name: 'area', formula: 'width * width' },
  ],
  rows: [['Town', '4', 'map', '']],
}

/** Every payload as a heading, a field and a unit, apart by each sign. */
const tables = PAYLOADS.flatMap((payload) =>
  ['\t', ';', ','].map(
    (sign) => `${[payload, 'width', `x [${payload}]`].join(sign)}\n${['1', payload, payload].join(sign)}`,
  ),
)

describe('a hostile table pasted does no harm', () => {
  test('whatever is in it', async () => {
    for (const text of [...PAYLOADS, ...tables])
      for (const cell of [empty, originals]) {
        const sheet = sheetOf([cell])
        useTable(sheet, cell, text)
        refusePollution()
        refuseMarkup(await handOverPage(sheet, { at: new Date(0) }))
      }
  })

  test('what it says is preserved to the letter', () => {
    const { rows } = readTable('title\twidth\n<script>alert(1)</script>\t=1+1\n')
    const taken = takeTable(originals, rows, matchTable(originals.columns, rows), 'instead')
    expect(taken.rows).toEqual([['<script>alert(1)</script>', '=1+1', '', '']])
  })

  test.each([
    ['one line of 10 MB', 'x'.repeat(10_000_000)],
    ['one line of 10 MB of fields', '1,'.repeat(5_000_000)],
    ['one line of 10 MB of quotes', '"'.repeat(10_000_000)],
    ['10 MB of quotes that open', ',"'.repeat(5_000_000)],
    ['10 MB of line ends', `${'\n'.repeat(9_999_999)}x`],
    ['10 MB of nothing', '\0'.repeat(10_000_000)],
    ['10 MB of short rows', '1\t2\n'.repeat(2_500_000)],
  ])('%s is refused in words, soon', async (_, text) => {
    const { ms, gave } = await measured(async () => {
      try {
        const { rows } = readTable(text, { most: 20_001 })
        takeTable(originals, rows, matchTable(originals.columns, rows), 'below')
        return 'taken'
      } catch (error) {
        if (error instanceof TableError) return error.message
        throw error
      }
    })
    expect(gave).toMatch(/fit|at most|in parts|too large/)
    expect(ms).toBeLessThan(LONGEST_MS)
  })
})
