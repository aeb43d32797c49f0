import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readSheetOrJob } from '../../src/cli/part-files.ts'
import { DRAWINGS } from '../../src/drawings/kinds/registry.ts'
import { LIBRARY } from '../../src/functions/index.ts'
import { type Cell, Sheet, type Worksheet } from '../../src/worksheet/index.ts'
import { bareFigure } from './bare.ts'
import { drawLimits } from './limit-bars.ts'

/** What a template shows of itself on the shelf. */
export interface ShelfFigure {
  readonly key: string
  /** A small figure drawn from its own figures, where it has any to draw. */
  readonly svg: string | undefined
  /** The same in words: one or two of its figures. */
  readonly words: string
}

const WIDTH = 300
const MOST_WORDS = 2
const LONGEST_LABEL = 34

interface Shelf {
  /** Which of its drawings represents it, by the cell's id; the first by default. */
  readonly drawing?: string
  /** Which of its results are shown, by name; else those set on the equipment, or the first. */
  readonly figures?: readonly string[]
}

async function drawn(sheet: Sheet, { drawing: preferred }: Shelf): Promise<string | undefined> {
  const drawings = sheet.cells.filter((cell) => cell.kind === 'drawing')
  const chosen = drawings.find(({ id }) => id === preferred)
  for (const cell of chosen ? [chosen, ...drawings] : drawings) {
    const draw = await DRAWINGS[cell.drawing].load(cell.from)
    const svg = bareFigure(draw(sheet.drawing(cell.id).values, { width: WIDTH, unit: cell.unit }).node)
    if (svg) return svg
  }
  const limits = drawLimits(sheet)
  return limits && bareFigure(limits)
}

/** `Magnification 1:9.5`; undefined for what is no single figure. */
function figureOf(sheet: Sheet, cell: Cell): string | undefined {
  if (cell.kind !== 'result') return undefined
  const { label = '' } = cell
  const outcome = sheet.outcome(cell.id)
  if (outcome.state !== 'value' || outcome.type.kind !== 'number' || label === '' || label.length > LONGEST_LABEL)
    return undefined
  // A figure of nothing says nothing.
  if (outcome.value === 0) return undefined
  return `${label} ${(outcome.shown.mark ?? outcome.shown.text).replaceAll(' ', '\u00a0')}`
}

const lowered = (text: string): string => (/^\p{Lu}\p{Ll}/u.test(text) ? text[0]?.toLowerCase() + text.slice(1) : text)

/** What is set on the equipment first; a template that names none shows its first results. */
function inWords(sheet: Sheet, { figures }: Shelf): string {
  const shownFigures = (cells: readonly Cell[]): string[] => cells.flatMap((cell) => figureOf(sheet, cell) ?? [])
  const chosen = figures?.flatMap((name) => sheet.named(name) ?? [])
  const shown = sheet.cells.filter((cell) => !('more_exact' in cell && cell.more_exact))
  const set = shown.filter((cell) => 'stand' in cell && cell.stand)
  const all = [...new Set(shownFigures(chosen ?? [...set, ...shown]))].slice(0, MOST_WORDS)
  return all.map((text, at) => (at === 0 ? text : lowered(text))).join('; ')
}

/** The figures of all templates in a folder. */
export async function figuresOf(folder: string): Promise<ShelfFigure[]> {
  const files = readdirSync(folder).filter((file) => file.endsWith('.json'))
  return Promise.all(
    files.map(async (file) => {
      const worksheet = readSheetOrJob(readFileSync(join(folder, file), 'utf8')) as Worksheet & { shelf?: Shelf }
      const sheet = new Sheet(worksheet, LIBRARY)
      const { shelf = {} } = worksheet
      const svg = await drawn(sheet, shelf)
      return { key: file.replace(/\.json$/, ''), svg, words: inWords(sheet, shelf) }
    }),
  )
}
