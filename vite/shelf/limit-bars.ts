import { element, type Node } from '../../src/drawings/canvas/tree.ts'
import type { Cell, Check, Sheet } from '../../src/worksheet/index.ts'

const MOST = 6
const WIDTH = 150
const ROW = 22
const BAR = 11

/** The two sides of a plain comparison. */
const SIDES = /^([^<>=]+?)\s*(<=|>=|<|>)\s*([^<>=]+)$/

interface Bar {
  readonly figure: number
  readonly limit: number
}

function barOf(sheet: Sheet, { condition }: Check): Bar | undefined {
  const [, left, , right] = SIDES.exec(condition) ?? []
  if (left === undefined || right === undefined || /\b(and|or|not)\b/.test(condition)) return undefined
  const pair: Cell = { kind: 'drawing', id: 'pair', drawing: 'ledger', from: { left, right } }
  const { values } = sheet.trial([...sheet.cells, pair]).drawing('pair')
  const { left: figure, right: limit } = values
  if (typeof figure !== 'number' || typeof limit !== 'number') return undefined
  return Number.isFinite(figure) && Number.isFinite(limit) && figure >= 0 && limit > 0 ? { figure, limit } : undefined
}

const line = (d: string, width: number): Node =>
  element('path', {
    d,
    fill: 'none',
    stroke: 'currentColor',
    'stroke-width': width,
    'vector-effect': 'non-scaling-stroke',
  })

const box = (width: number, top: number): string =>
  `M 0 ${top} L ${width.toFixed(1)} ${top} L ${width.toFixed(1)} ${top + BAR} L 0 ${top + BAR} Z`

/** For a sheet that draws nothing: what it checks, each figure as a bar against the mark of its limit. */
export function drawLimits(sheet: Sheet): Node | undefined {
  const bars = sheet.cells.flatMap((cell) => (cell.kind === 'check' ? (barOf(sheet, cell) ?? []) : [])).slice(0, MOST)
  if (bars.length === 0) return undefined
  const rows = bars.flatMap(({ figure, limit }, at) => {
    const whole = Math.max(figure, limit * 1.2)
    const mark = (limit / whole) * WIDTH
    const top = at * ROW
    return [
      line(box(Math.max(2, (figure / whole) * WIDTH), top), 1.8),
      line(`M ${mark.toFixed(1)} ${top - 4} L ${mark.toFixed(1)} ${top + BAR + 4}`, 1.8),
    ]
  })
  const rule = line(`M 0 -6 L 0 ${bars.length * ROW - ROW + BAR + 6}`, 1)
  return element('svg', {}, rule, ...rows)
}
