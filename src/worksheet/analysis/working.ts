import {
  checkFormula,
  FULL_COMPILER,
  type RecordValue,
  showTyped,
  showValue,
  type Type,
  type Value,
} from '../../language/index.ts'
import { namesShown } from '../document/message-places.ts'
import { isNamed } from '../document/names.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Engine } from '../engine/engine.ts'
import { VALUE } from '../engine/engine-view.ts'
import { formulaOf, type Node } from '../engine/node.ts'
import { kindOf } from '../kinds/index.ts'

/** A stretch of a formula; a name in it leads to its cell. */
export interface Stretch {
  readonly text: string
  readonly id?: string
}

/** A result as one would show it on paper, and where it leads. */
export interface Working {
  readonly formula: readonly Stretch[]
  /** The same with the numbers put in; undefined where it has no figures yet. */
  readonly figures?: string
  /** The ids of the cells it feeds, in the order of the sheet. */
  readonly feeds: readonly string[]
}

/** A value shown longer than this is left as its name. */
const LONGEST = 48

/** The working of a result: its formula with the figures put in, step by step; undefined where it does not compute. */
export function workingOf(sheet: Sheet, id: string): Working | undefined {
  const { engine } = sheet
  const node = engine.node(id)
  if (!node || kindOf(node.cell).computed !== 'formula') return undefined
  const text = formulaOf(node.cell)
  const spans = [...checkFormula(text, engine.scope()).nameSpans].sort((a, b) => a.from - b.from)
  const formula: Stretch[] = []
  let figures = ''
  let ready = spans.length > 0
  let at = 0
  for (const { name, from, to } of spans) {
    const cell = engine.named(name)
    if (from < at || !cell) continue
    formula.push({ text: text.slice(at, from) }, { text: name, id: cell.cell.id })
    const put = cell && figureFor(engine, cell, text, from, to)
    if (!put) ready = false
    figures += text.slice(at, from) + (put?.text ?? name)
    at = put?.to ?? to
    if (at > to) formula.push({ text: text.slice(to, at) })
  }
  formula.push({ text: text.slice(at) })
  figures += text.slice(at)
  return {
    formula: formula.filter(({ text }) => text !== ''),
    ...(ready && figures !== text ? { figures } : {}),
    feeds: feedsOf(sheet, node),
  }
}

/** What replaces a name: its figure, or of a size or a record the part that the formula reads. */
function figureFor(
  engine: Engine,
  node: Node,
  text: string,
  from: number,
  to: number,
): { readonly text: string; readonly to: number } | undefined {
  if (engine.state(node) !== VALUE || !node.type) return undefined
  let value: Value = engine.value(node)
  let type: Type = node.type
  let end = to
  for (
    let part = /^\.(\w+)/.exec(text.slice(end));
    part && type.kind === 'record';
    part = /^\.(\w+)/.exec(text.slice(end))
  ) {
    const next: Type | undefined = type.parts[part[1] as string]
    if (!next) break
    value = (value as RecordValue)[part[1] as string] as Value
    type = next
    end += part[0].length
  }
  if (type.kind === 'text') return { text: `"${String(value)}"`, to: end }
  if (type.kind === 'record') return { text: text.slice(from, end), to: end }
  const show = node.reading ? showTyped : showValue
  const shown = show(value, type, type === node.type || type.kind === 'number' ? node.unit : undefined).text
  if (shown.length > LONGEST) return { text: text.slice(from, end), to: end }
  const raised = /^\s*\^/.test(text.slice(end)) || /\^\s*$/.test(text.slice(0, from))
  return { text: raised && /[\s−:]/.test(shown) ? `(${shown})` : shown.startsWith('−') ? `(${shown})` : shown, to: end }
}

function feedsOf(sheet: Sheet, node: Node): string[] {
  const { layout } = sheet.engine
  const fed = new Set(
    (layout.dependants[sheet.engine.positionOf(node)] as readonly number[]).map((at) => layout.order[at]?.cell.id),
  )
  const { name } = node.cell
  return sheet.cells
    .filter((cell) => (isNamed(cell) ? fed.has(cell.id) : namesShown(cell, FULL_COMPILER).has(name)))
    .map(({ id }) => id)
}
