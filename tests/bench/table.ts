import { LIBRARY } from '../../src/functions/index.ts'
import { type Column, FORMAT, Sheet, type TableCell } from '../../src/worksheet/index.ts'
import { median, ms, timed } from './measure.ts'

const ROWS = 2_000
const ROUNDS = 101

const COLUMNS: readonly Column[] = [
  { name: 'number', entry: 'text' },
  { name: 'width', unit: 'mm' },
  { name: 'height', unit: 'mm' },
  { name: 'sampling', unit: 'ppi' },
  { name: 'kind', entry: 'choice', options: ['map', 'print', 'letter'] },
  { name: 'bound', entry: 'tick' },
  { name: 'area', unit: 'cm^2', formula: 'width * height' },
  { name: 'longer', unit: 'mm', formula: 'max(width, height) + 2 * border' },
  { name: 'pixels', unit: 'px', formula: 'longer * sampling' },
  { name: 'frames', formula: 'when(bound, 2, 1) * ceil(pixels / (8000 px))' },
]

const kinds = ['map', 'print', 'letter']
const rows = (): string[][] =>
  Array.from({ length: ROWS }, (_, i) => [
    `A ${i}`,
    `${200 + (i % 400)}`,
    `${150 + (i % 300)},5`,
    `${300 + 100 * (i % 3)}`,
    kinds[i % 3] as string,
    i % 5 === 0 ? 'yes' : '',
    '',
    '',
    '',
    '',
  ])

/** A table of 2,000 rows and 10 columns: opened, and a row typed into. */
export function table(): void {
  const cell: TableCell = { kind: 'table', id: 's', name: 'originals', columns: [...COLUMNS], rows: rows() }
  const start = performance.now()
  const sheet = new Sheet(
    {
      format: FORMAT,
      version: 2,
      title: '',
      cells: [
        { kind: 'given', id: 'border', name: 'border', unit: 'mm', value: '10' },
        cell,
        { kind: 'result', id: 'all', name: 'all', formula: 'sum(originals.frames)' },
      ],
    },
    LIBRARY,
  )
  sheet.outcome('s')
  const opened = performance.now() - start
  sheet.watch((changed) => {
    if (changed !== 'all') for (const id of changed) sheet.outcome(id)
  })
  const times = Array.from({ length: ROUNDS }, (_, i) =>
    timed(() => {
      const before = sheet.cell('s') as TableCell
      const row = (before.rows[1_998] as string[]).with(1, `${100 + i}`)
      sheet.apply({ do: 'replace', cell: { ...before, rows: before.rows.with(1_998, row) } }, { merge: 'field' })
    }),
  )
  console.log(
    `A table of ${ROWS} rows × ${COLUMNS.length} columns: opened in ${ms(opened)}; a field typed into, ${ms(median(times))}`,
  )
}
