import type { Cell, Worksheet } from '../../worksheet/schema/document.ts'

const DIGITS = 5
const LONGEST_FIGURE = 120
const LONG_NUMBER = /\d+\.\d{4,}(e-?\d+)?/g

const rounded = (formula: string): string =>
  formula.replace(LONG_NUMBER, (figure) => `${Number(Number(figure).toPrecision(DIGITS))}`)

/** Nothing refers to a name any more; short ones make a shorter link. */
const shortName = (at: number): string => `c${at}`

function bare(cell: Cell, at: number): readonly Cell[] {
  const id = `${at}`
  switch (cell.kind) {
    case 'given': {
      if (cell.value.trim() === '') return []
      const { kind, label, name, value, unit, entry } = cell
      // What a choice offers is left out, so it stands as a text.
      const stays = entry === 'choice' ? 'text' : entry
      return [
        {
          kind,
          id,
          name: shortName(at),
          label: label || name,
          value,
          ...(unit ? { unit } : {}),
          ...(stays ? { entry: stays } : {}),
        },
      ]
    }
    case 'result': {
      // A list of lamps, say: only a drawing would make something of it.
      if (cell.formula.length > LONGEST_FIGURE) return []
      const { kind, label, name, unit, formula, measured } = cell
      return [
        {
          kind,
          id,
          name: shortName(at),
          label: label || name,
          formula: rounded(formula),
          ...(unit ? { unit } : {}),
          ...(measured ? { measured } : {}),
        },
      ]
    }
    case 'check': {
      const { kind, label, condition, message } = cell
      const said = condition === 'no' ? { message } : { message: '', passes: message }
      return [{ kind, id, name: shortName(at), ...(label ? { label } : {}), condition, ...said }]
    }
    case 'note':
      if (!cell.role || cell.role === 'prose') return []
      return [{ kind: 'note', id, text: cell.text, role: cell.role }]
    default:
      return []
  }
}

/** A sheet of figures without its drawings, prose, hints and ranges: small enough, most often, for a QR code. */
export const bareFigures = (figures: Worksheet): Worksheet => ({ ...figures, cells: figures.cells.flatMap(bare) })

const isSeldomKnown = (cell: Cell): boolean => 'more_exact' in cell && cell.more_exact === true

/** The same without what is seldom known, and of the checks only those that do not simply hold. */
export const minimalFigures = (figures: Worksheet): Worksheet =>
  bareFigures({
    ...figures,
    cells: figures.cells.filter((cell) => !isSeldomKnown(cell) && !(cell.kind === 'check' && cell.condition === 'yes')),
  })
