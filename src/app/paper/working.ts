import { namesIn, type RecordValue, showTyped, showValue, type Type, type Value } from '../../language/index.ts'
import type { Result, Sheet } from '../../worksheet/index.ts'

/** A formula as written, and with figures in place of the names; both are the same where there are none. */
export interface Working {
  readonly formula: string
  readonly filled: string
}

interface Put {
  readonly figure: string
  /** The length of the text after the name that the figure also replaces, such as `.width`. */
  readonly further: number
}

const isOneFigure = ({ kind }: Type): boolean => kind === 'number' || kind === 'yes or no'

/** The value of a name with the part after it, where it is a single figure: `917 mm`. */
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
  const show = cell.kind === 'given' ? showTyped : showValue
  return { figure: show(inside, of).text, further: dotted.length }
}

/** A figure in brackets where the operator before it would otherwise apply to a part of it. */
const whole = (figure: string): string => (/^[-−]|±/.test(figure) ? `(${figure})` : figure)

/** The working of a result: its formula as written, and with figures in place of the names. */
export function workingOf(sheet: Sheet, { formula }: Result): Working {
  let filled = formula
  for (const { name, from, to } of [...namesIn(formula)].reverse()) {
    const put = figureOf(sheet, name, formula.slice(to))
    if (put) filled = filled.slice(0, from) + whole(put.figure) + filled.slice(to + put.further)
  }
  return { formula, filled }
}
