import { isHeading } from '../../worksheet/document/names.ts'
import { type ByKind, byKind } from '../../worksheet/kinds/index.ts'
import type { Cell, Worksheet } from '../../worksheet/schema/document.ts'

const DIGITS = 5
const LONGEST_FIGURE = 120
const LONG_NUMBER = /\d+\.\d{4,}(e-?\d+)?/g

const rounded = (formula: string): string =>
  formula.replace(LONG_NUMBER, (figure) => `${Number(Number(figure).toPrecision(DIGITS))}`)

const none = (): readonly Cell[] => []

/** What is left of a cell, by its kind: at most one cell with the fewest keys, under a short name: nothing refers to it any more. */
const BARE: ByKind<[short: string], readonly Cell[]> = {
  given: ({ kind, label, name, value, unit, entry }, short) => {
    if (value.trim() === '') return []
    // The options of a choice are left out, so its value becomes a text.
    const keptEntry = entry === 'choice' ? 'text' : entry
    return [
      {
        kind,
        id: short,
        name: short,
        label: label || name,
        value,
        ...(unit ? { unit } : {}),
        ...(keptEntry ? { entry: keptEntry } : {}),
      },
    ]
  },
  result: ({ kind, label, name, unit, formula, measured }, short) => {
    // A long list, say of lamps, is of use to a drawing alone.
    if (formula.length > LONGEST_FIGURE) return []
    return [
      {
        kind,
        id: short,
        name: short,
        label: label || name,
        formula: rounded(formula),
        ...(unit ? { unit } : {}),
        ...(measured ? { measured } : {}),
      },
    ]
  },
  check: ({ kind, label, condition, message }, short) => {
    const sentence = condition === 'no' ? { message } : { message: '', passes: message }
    return [{ kind, id: short, name: short, ...(label ? { label } : {}), condition, ...sentence }]
  },
  note: ({ text, role }, short) => (!role || role === 'prose' ? [] : [{ kind: 'note', id: short, text, role }]),
  drawing: none,
  steps: none,
  table: none,
  range: none,
  variants: none,
  run: none,
  frame: none,
  function: none,
}

/** A sheet of figures without its drawings, prose, hints and ranges: small enough, most often, for a QR code. */
export function bareFigures(figures: Worksheet): Worksheet {
  const cells: Cell[] = []
  // Base 36 packs best. No unit begins with x.
  for (const cell of figures.cells) cells.push(...byKind(BARE, cell, `x${cells.length.toString(36)}`))
  return { ...figures, cells }
}

const isSeldomKnown = (cell: Cell): boolean => 'more_exact' in cell && cell.more_exact === true
/** A habit of the trade says nothing about this job. */
const isUsual = (cell: Cell): boolean =>
  cell.kind === 'given' && cell.from?.kind === 'usual' && cell.from.text === cell.value

/** The same without fine adjustments and usual values, and with only those checks that do not simply pass. */
export function minimalFigures(figures: Worksheet): Worksheet {
  const bare = bareFigures({
    ...figures,
    cells: figures.cells.filter(
      (cell) => !isSeldomKnown(cell) && !isUsual(cell) && !(cell.kind === 'check' && cell.condition === 'yes'),
    ),
  })
  // A heading over nothing is left out.
  const cells = bare.cells.filter((cell, at) => {
    const next = bare.cells[at + 1]
    return !isHeading(cell) || (next !== undefined && !isHeading(next))
  })
  return { ...bare, cells }
}
