import { namesIn, type RecordValue, showValue, type Type, type Value } from '../../language/index.ts'
import type { Result, Sheet } from '../../worksheet/index.ts'

/** A formula as it is written, and with the figures put in for the names; the same where there is nothing to put in. */
export interface Working {
  readonly formula: string
  readonly filled: string
}

interface Put {
  readonly figure: string
  /** How far the text it stands for goes on behind the name: `.width`. */
  readonly further: number
}

const isOneFigure = ({ kind }: Type): boolean => kind === 'number' || kind === 'yes or no'

/** What a name, with the part behind it, stands for, where that is one figure: `917 mm`. */
function figureOf(sheet: Sheet, name: string, behind: string): Put | undefined {
  const cell = sheet.named(name)
  if (cell?.kind !== 'given' && cell?.kind !== 'result') return undefined
  const outcome = sheet.outcome(cell.id)
  if (outcome.state !== 'value') return undefined
  const { value, type, shown } = outcome
  if (isOneFigure(type)) return { figure: shown.text, further: 0 }
  const [dotted, part = ''] = /^\.(\w+)/.exec(behind) ?? []
  const of = type.kind === 'record' && Object.hasOwn(type.parts, part) ? type.parts[part] : undefined
  if (!dotted || !of || !isOneFigure(of)) return undefined
  const inside = (value as RecordValue)[part] as Value
  return { figure: showValue(inside, of).text, further: dotted.length }
}

/** Kept together where it would be torn by what stands before it. */
const whole = (figure: string): string => (/^[-−]|±/.test(figure) ? `(${figure})` : figure)

export function workingOf(sheet: Sheet, { formula }: Result): Working {
  let filled = formula
  for (const { name, from, to } of [...namesIn(formula)].reverse()) {
    const put = figureOf(sheet, name, formula.slice(to))
    if (put) filled = filled.slice(0, from) + whole(put.figure) + filled.slice(to + put.further)
  }
  return { formula, filled }
}
