import { namesIn } from '../../language/index.ts'
import type { Result, Sheet } from '../../worksheet/index.ts'

/** A formula as it is written, and with the figures put in for the names; the same where there is nothing to put in. */
export interface Working {
  readonly formula: string
  readonly filled: string
}

/** What a name stands for, where it is one figure: `917 mm`. */
function figureOf(sheet: Sheet, name: string): string | undefined {
  const cell = sheet.named(name)
  if (cell?.kind !== 'given' && cell?.kind !== 'result') return undefined
  const outcome = sheet.outcome(cell.id)
  if (outcome.state !== 'value' || (outcome.type.kind !== 'number' && outcome.type.kind !== 'yes or no'))
    return undefined
  const { text } = outcome.shown
  // A figure of several words is kept together.
  return text.startsWith('-') || text.startsWith('−') || text.includes('±') ? `(${text})` : text
}

export function workingOf(sheet: Sheet, { formula }: Result): Working {
  let filled = formula
  for (const { name, from, to } of [...namesIn(formula)].reverse()) {
    const figure = figureOf(sheet, name)
    if (figure !== undefined) filled = filled.slice(0, from) + figure + filled.slice(to)
  }
  return { formula, filled }
}
