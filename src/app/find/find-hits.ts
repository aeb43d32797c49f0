import { type Cell, isNamed, type Sheet } from '../../worksheet/index.ts'

/** A cell in which something was found. */
export interface Hit {
  readonly id: string
  /** In what of it, in words that follow «in»: `its formula`. */
  readonly place: string
}

type Text = readonly [place: string, text: string | undefined]

/** Texts are compared without case, accents and the sorts of space. */
const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').replace(/\s+/g, ' ').toLowerCase()

/** Every cell that holds the words sought, in the order of the sheet, each with the first place they are found in. */
export function findIn(sheet: Sheet, words: string): Hit[] {
  const sought = plain(words.trim())
  if (sought === '') return []
  const holds = ([, text]: Text): boolean => text !== undefined && plain(text).includes(sought)
  return sheet.cells.flatMap((cell) => {
    // What is computed costs most, and is looked at last.
    const found = textsOf(cell).find(holds) ?? [figureOf(sheet, cell)].find(holds)
    return found ? [{ id: cell.id, place: found[0] }] : []
  })
}

function textsOf(cell: Cell): Text[] {
  const called: Text[] = [
    ['its label', isNamed(cell) ? cell.label : undefined],
    ['its title', 'title' in cell && typeof cell.title === 'string' ? cell.title : undefined],
    ['its name', isNamed(cell) ? cell.name : undefined],
  ]
  return [...called, ...ownTexts(cell)]
}

const lines = (...texts: readonly (string | undefined)[]): string => texts.filter(Boolean).join('\n')

const formulas = (from: Readonly<Record<string, string>>): Text[] =>
  Object.values(from).map((text) => ['its formulas', text])

function ownTexts(cell: Cell): Text[] {
  switch (cell.kind) {
    case 'given':
      return [
        ['its value', cell.value],
        ['its piece of kit', lines(...Object.values(cell.piece ?? {}))],
        ['the word beside it', cell.hint],
      ]
    case 'result':
      return [
        ['its formula', cell.formula],
        ['what was measured', cell.measured],
        ['the word beside it', cell.hint],
        ['how it is measured', cell.measure],
      ]
    case 'check':
      return [
        ['its condition', cell.condition],
        ['what it says', lines(cell.message, cell.passes)],
      ]
    case 'note':
      return [['its text', lines(cell.text, cell.about)]]
    case 'frame':
    case 'function':
      return []
    case 'drawing':
      return formulas(cell.from)
    case 'run':
      return [['its table', cell.of], ...formulas(cell.from)]
    case 'steps':
      return cell.steps.flatMap(({ text, reading }, at): Text[] => [
        [`step ${at + 1}`, text],
        [`what is read at step ${at + 1}`, reading],
      ])
    case 'table':
      return [
        ...cell.columns.flatMap((column): Text[] => [
          ['a column’s heading', lines(column.label, column.name)],
          ['a column’s formula', column.formula],
        ]),
        ...cell.rows.map((row, at): Text => [`row ${at + 1}`, lines(...row)]),
      ]
    case 'range':
      return [['what it follows', lines(cell.of, ...cell.results)]]
    case 'variants':
      return [
        ...cell.sets.map(
          ({ title, values }): Text => ['a variant', lines(title, ...Object.keys(values), ...Object.values(values))],
        ),
        ['what it compares', lines(...cell.results)],
      ]
  }
}

/** What a cell shows besides what was typed into it. */
function figureOf(sheet: Sheet, cell: Cell): Text {
  if (cell.kind === 'check') return ['what it says', sheet.check(cell.id).message]
  if (cell.kind !== 'given' && cell.kind !== 'result') return ['', undefined]
  const outcome = sheet.outcome(cell.id)
  if (outcome.state !== 'value') return ['', undefined]
  return [cell.kind === 'result' ? 'its figure' : 'its value', lines(outcome.shown.text, outcome.shown.mark)]
}
