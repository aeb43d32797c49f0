import fc from 'fast-check'
import { LIBRARY } from '../../src/functions/index.ts'
import {
  type Cell,
  type Change,
  ChangeRefused,
  isNamed,
  readDocument,
  Sheet,
  type Worksheet,
} from '../../src/worksheet/index.ts'
import { numericSheets } from '../hostile/numeric.ts'
import { JOBS, readTemplate } from '../templates/open.ts'

const templates = JOBS.map(readTemplate)

/** Texts as a technician types them, right and wrong. */
const TYPED = [
  '60 mm',
  '420 mm ± 2 mm',
  '1.2 m',
  'f/8',
  '1/125 s',
  '400 ppi',
  '45°',
  '1:4',
  '0',
  '-3',
  '',
  'x',
  '2 *',
  'a',
  '2 * a',
  'r0 + r0',
  'missing',
  '420 x 297',
  'yes',
] as const
const typed = fc.constantFrom<string>(...TYPED)

/** One edit, reported by numbers that fit any sheet. */
const edit = fc.record({
  do: fc.constantFrom('type', 'type', 'type', 'measure', 'formula', 'remove', 'move', 'copy', 'rename', 'undo', 'redo'),
  at: fc.nat({ max: 400 }),
  to: fc.nat({ max: 400 }),
  text: typed,
})
type Edit = typeof edit extends fc.Arbitrary<infer T> ? T : never

/** A sheet with edits to make in it, one after another. */
export const sequences = fc.record({
  worksheet: fc.oneof(
    { weight: 19, arbitrary: numericSheets(typed, typed).map(readDocument) },
    { weight: 1, arbitrary: fc.constantFrom(...templates) },
  ),
  edits: fc.array(edit, { minLength: 3, maxLength: 16 }),
})

function changeFor({ do: what, at, to, text }: Edit, cells: readonly Cell[]): Change | undefined {
  const cell = cells[at % Math.max(1, cells.length)]
  if (!cell) return undefined
  if (what === 'remove') return { do: 'remove', id: cell.id }
  if (what === 'move') return { do: 'move', id: cell.id, to: to % cells.length }
  if (what === 'rename' && isNamed(cell)) return { do: 'rename', id: cell.id, name: `n${to}` }
  if (what === 'copy') {
    const copy = { ...cell, id: `copy${to}`, ...(isNamed(cell) ? { name: `copy${to}` } : {}) } as Cell
    return { do: 'add', cell: copy, at: to % cells.length }
  }
  if (cell.kind === 'given') return { do: 'replace', cell: { ...cell, value: text } }
  if (cell.kind === 'result' && what === 'measure') return { do: 'replace', cell: { ...cell, measured: text } }
  if (cell.kind === 'result') return { do: 'replace', cell: { ...cell, formula: text } }
  if (cell.kind === 'check') return { do: 'replace', cell: { ...cell, condition: text } }
  if (cell.kind === 'table')
    return { do: 'replace', cell: { ...cell, rows: cell.rows.map((row) => row.with(to % row.length, text)) } }
  return undefined
}

/** A sheet whose limits are computed however busy the machine is: a page leaves them out where they would hold it up. */
function opened(worksheet: Worksheet): Sheet {
  const sheet = new Sheet(worksheet, LIBRARY)
  sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
  return sheet
}

/** What a sheet shows of each cell. */
const shown = (sheet: Sheet): string[] =>
  sheet.cells.map((cell) => {
    const outcome =
      cell.kind === 'given' || cell.kind === 'result' || cell.kind === 'table'
        ? sheet.outcome(cell.id)
        : cell.kind === 'check'
          ? sheet.check(cell.id)
          : cell.kind === 'drawing'
            ? sheet.drawing(cell.id)
            : null
    return `${cell.id}: ${JSON.stringify(outcome, plain)}`
  })

/** Numbers and functions as text, so that every one of them is compared. */
const plain = (_: string, value: unknown): unknown =>
  typeof value === 'number' && !Number.isFinite(value) ? String(value) : typeof value === 'function' ? 'f' : value

function compare(now: readonly string[], fresh: readonly string[], when: string): void {
  const at = now.findIndex((one, at) => one !== fresh[at])
  if (at >= 0) throw new Error(`${when} it shows\n${now[at]}\nwhere a fresh sheet shows\n${fresh[at]}`)
}

/** Makes the edits in an open sheet; after the last it shows what a fresh one of the same document does. Gives their count. */
export function edited({ worksheet, edits }: { worksheet: Worksheet; edits: readonly Edit[] }): number {
  const sheet = opened(worksheet)
  let made = 0
  for (const one of edits) {
    if (one.do === 'undo') sheet.undo()
    else if (one.do === 'redo') sheet.redo()
    else {
      const change = changeFor(one, sheet.cells)
      try {
        if (change) sheet.apply(change)
      } catch (error) {
        if (!(error instanceof ChangeRefused)) throw error
      }
    }
    made++
  }
  compare(shown(sheet), shown(opened(sheet.worksheet)), 'Edited,')
  while (sheet.undo());
  compare(shown(sheet), shown(opened(worksheet)), 'Undone,')
  return made
}
