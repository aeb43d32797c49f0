import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Cell, type Change, ChangeRefused, type Sheet, type TableCell } from '../../../src/worksheet/index.ts'
import { check, given, result, sheetOf } from '../make.ts'

const NAMES = ['width', 'depth', 'focal', 'ratio', 'span']
/** Formulas whose fixes, suggestions and messages depend on cells they do not name. */
const FORMULAS = [
  '2 * widht',
  'depht + focal',
  'foca / spam',
  '?',
  'width + ?',
  '? / focal',
  'when(?, width, depth)',
  'lens_to_original(focal)',
  'lens_to_original()',
  'magnification(focl, width)',
  'width + 2',
  'focal * "width"',
  '2 (width',
  'width depth',
  'width',
  '2 * span',
  'width > depth',
  '',
]
const VALUES = ['60 mm', '1:4', '2 s', '400 ppi', '', 'nonsense', '3']

const name = fc.constantFrom(...NAMES)
const formula = fc.constantFrom(...FORMULAS)
const table = (id: string, text: string): TableCell => ({
  kind: 'table',
  id,
  name: id,
  columns: [
    { name: 'length', unit: 'mm' },
    { name: 'twice', formula: text },
  ],
  rows: [['1', '']],
})
const cell: fc.Arbitrary<Cell> = fc.oneof(
  fc.tuple(name, fc.constantFrom(...VALUES)).map(([id, text]) => given(id, text)),
  fc
    .tuple(name, formula, fc.constantFrom(undefined, 'mm', 's'))
    .map(([id, text, unit]) => result(id, text, unit === undefined ? {} : { unit })),
  fc.tuple(name, formula).map(([id, text]) => check(id, text)),
  fc.tuple(name, formula).map(([id, text]) => table(id, text)),
)
const change: fc.Arbitrary<Change> = fc.oneof(
  { weight: 4, arbitrary: cell.map((one): Change => ({ do: 'replace', cell: one })) },
  { weight: 1, arbitrary: fc.tuple(cell, fc.nat(6)).map(([one, at]): Change => ({ do: 'add', cell: one, at })) },
  { weight: 1, arbitrary: name.map((id): Change => ({ do: 'remove', id })) },
  { weight: 1, arbitrary: fc.tuple(name, fc.nat(6)).map(([id, to]): Change => ({ do: 'move', id, to })) },
  { weight: 1, arbitrary: fc.tuple(name, name).map(([id, to]): Change => ({ do: 'rename', id, name: to })) },
)

/** What a sheet says of each cell, with every fix and warning. */
const said = (sheet: Sheet): ReadonlyMap<string, string> =>
  new Map(
    sheet.cells.map((one) => {
      const outcome = one.kind === 'check' ? sheet.check(one.id) : sheet.outcome(one.id)
      return [one.id, JSON.stringify(outcome, (_, value) => (typeof value === 'number' ? String(value) : value))]
    }),
  )

test('fixes and suggestions are those of a sheet freshly opened, and every cell that says something else is reported', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(cell, { selector: ({ id }) => id }),
      fc.array(change, { maxLength: 8 }),
      (cells, all) => {
        const sheet = sheetOf(cells)
        let reported = new Set<string>()
        sheet.watch((changed) => {
          reported = new Set(changed === 'all' ? sheet.cells.map(({ id }) => id) : changed)
        })
        let before = said(sheet)
        expect(before).toEqual(said(sheetOf(cells)))
        for (const one of all) {
          try {
            sheet.apply(one)
          } catch (error) {
            if (!(error instanceof ChangeRefused)) throw error
            continue
          }
          const now = said(sheet)
          expect(now).toEqual(said(sheetOf(sheet.cells)))
          for (const [id, text] of now) if (before.get(id) !== text) expect(reported, `${id}: ${text}`).toContain(id)
          before = now
        }
      },
    ),
    { numRuns: 150 },
  )
})
