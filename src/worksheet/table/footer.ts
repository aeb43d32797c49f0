import {
  type Computable,
  ComputeError,
  computeOnce,
  type Diagnostic,
  explainFailure,
  list,
  PLAIN_NUMBER,
  problem,
  type Scope,
  showValue,
  type Value,
} from '../../language/index.ts'
import { NONE, ReadError, readQuantity } from '../../units/index.ts'
import type { Engine } from '../engine/engine.ts'
import { VALUE } from '../engine/engine-view.ts'
import type { Node } from '../engine/node.ts'
import { needsCondition } from '../engine/words.ts'
import type { Column } from '../schema/document.ts'
import { rowsComputed, valueAt } from './row-status.ts'
import type { RowsComputed } from './rows.ts'
import { type CompiledColumn, type CompiledTable, tableOf } from './table-node.ts'
import * as words from './words.ts'

type Foot = NonNullable<Column['foot']>[number]

/** A figure under a column. */
export interface FooterFigure {
  /** What it is: `Sum`, `95 % percentile`; and of which rows, where not of all. */
  readonly words: string
  readonly where?: string
  /** In the column's unit; undefined while there is none. */
  readonly shown?: string
  /** What is wrong with the condition, or why there is no figure. */
  readonly diagnostics: readonly Diagnostic[]
}

export const FOOTER_LABELS: Readonly<Record<Foot['figure'], string>> = words.FOOTERS

/** The share a percentile is of where nothing is said. */
export const USUAL_SHARE = '95 %'

/** What a foot's figure is called. */
const footerLabel = ({ figure, share }: Foot): string =>
  figure === 'percentile' ? words.percentile(share?.trim() || USUAL_SHARE) : FOOTER_LABELS[figure]

/** Which rows a figure is made of; undefined where all that count. */
interface Condition {
  readonly isCounted?: (row: number) => boolean
  readonly diagnostics: readonly Diagnostic[]
  /** A name it waits for. */
  readonly waits?: boolean
}

/** The figures under a table's columns, by column; made only for tables that are looked at. */
export function footerOf(engine: Engine, node: Node): readonly (readonly FooterFigure[])[] {
  const { cell } = node
  if (cell.kind !== 'table') return []
  return feetOver(
    engine,
    node,
    cell.columns.map(({ foot }) => foot ?? []),
  )
}

/** The figures of each column over the rows that count, or over those among them that are in a group. */
function feetOver(
  engine: Engine,
  node: Node,
  feet: readonly (readonly Foot[])[],
  isIn: (row: number) => boolean = () => true,
): readonly (readonly FooterFigure[])[] {
  const table = tableOf(node)
  const computed = rowsComputed(engine, node)
  const grouped = computed && { ...computed, counted: computed.counted.filter(isIn) }
  return feet.map((own, at) =>
    own.map((foot): FooterFigure => {
      const meaning = table?.columns[at]
      const where = foot.where?.trim()
      // Below its own heading a ticked column needs no other words for what is ticked.
      const isSaid = where && where !== meaning?.column.name
      const said = { words: footerLabel(foot), ...(isSaid ? { where } : {}) }
      if (!table || !meaning?.type) return { ...said, diagnostics: [] }
      const condition = conditionOf(engine, node, table, foot.where)
      if (condition.diagnostics.length > 0 || condition.waits || !grouped)
        return { ...said, diagnostics: condition.diagnostics }
      return { ...said, ...figureOf(engine, node, grouped, at, meaning, foot, condition) }
    }),
  )
}

/** The rows that have one value in the column a table is grouped by, with their totals. */
export interface RowGroup {
  /** The value they share, as shown. */
  readonly label: string
  readonly count: number
  /** By column. A column of quantities without figures of its own has its sum. */
  readonly feet: readonly (readonly FooterFigure[])[]
}

/** More groups than these are not worth a table; the column is hardly one to group by. */
const MOST_GROUPS = 200

/** The groups of a table in the order in which they first occur; none where it is not grouped. */
export function groupsOf(engine: Engine, node: Node): readonly RowGroup[] {
  const { cell } = node
  if (cell.kind !== 'table' || cell.group === undefined) return []
  const by = cell.columns.findIndex(({ name }) => name === cell.group)
  const computed = rowsComputed(engine, node)
  const meaning = tableOf(node)?.columns[by]
  if (!computed || !meaning?.type) return []
  const groups = new Map<string, Set<number>>()
  for (const row of computed.counted) {
    const value = valueAt(node, computed, row, by)
    const label = value === undefined ? '' : showValue(value, meaning.type, meaning.unit).text
    const rows = groups.get(label) ?? new Set()
    groups.set(label, rows.add(row))
  }
  const feet = cell.columns.map(({ foot }, at): readonly Foot[] => {
    if (at === by) return []
    return foot ?? (tableOf(node)?.columns[at]?.type?.kind === 'number' ? [{ figure: 'sum' }] : [])
  })
  return [...groups].slice(0, MOST_GROUPS).map(([label, rows]) => ({
    label,
    count: rows.size,
    feet: feetOver(engine, node, feet, (row) => rows.has(row)),
  }))
}

/**
 * The rows a filter lets through: those that meet it where it is a condition on a row, such as `width > 300 mm`, else
 * those with the text in one of their fields. Undefined where the filter is empty.
 */
export function filteredRows(engine: Engine, node: Node, filter: string): readonly number[] | undefined {
  const { cell } = node
  const wanted = filter.trim().toLowerCase()
  if (cell.kind !== 'table' || wanted === '') return undefined
  const rows = cell.rows.map((_, at) => at)
  const table = tableOf(node)
  if (table && /[<>=≤≥≠]/.test(filter)) {
    const { isCounted, diagnostics } = conditionOf(engine, node, table, filter)
    if (isCounted && diagnostics.length === 0) return rows.filter(isCounted)
  }
  const computed = rowsComputed(engine, node)
  return rows.filter((row) =>
    cell.columns.some((_, at) => {
      const typed = cell.rows[row]?.[at] ?? ''
      if (typed.toLowerCase().includes(wanted)) return true
      const value = valueAt(node, computed, row, at)
      const meaning = table?.columns[at]
      return (
        value !== undefined &&
        meaning?.type !== undefined &&
        showValue(value, meaning.type, meaning.unit).text.toLowerCase().includes(wanted)
      )
    }),
  )
}

function figureOf(
  engine: Engine,
  node: Node,
  computed: RowsComputed,
  at: number,
  meaning: CompiledColumn,
  foot: Foot,
  { isCounted }: Condition,
): Pick<FooterFigure, 'shown' | 'diagnostics'> {
  const type = list(meaning.type as NonNullable<CompiledColumn['type']>)
  const share = shareOf(foot)
  if (typeof share === 'string') return { diagnostics: [problem(share, 0, 0)] }
  const scope: Scope = {
    library: engine.scope().library,
    typeOf: (name) => (name === 'values' ? type : name === 'share' ? PLAIN_NUMBER : undefined),
    names: () => [],
  }
  const text = foot.figure === 'percentile' ? 'percentile(values, share)' : `${foot.figure}(values)`
  const found = engine.compile(text, scope)
  if (!found) return { diagnostics: [] }
  if (!found.meaning) {
    const why =
      meaning.type?.kind === 'number'
        ? (found.errors[0]?.message ?? '')
        : words.onlyQuantities(FOOTER_LABELS[foot.figure].toLowerCase())
    return { diagnostics: [problem(why, 0, 0)] }
  }
  try {
    const values = computed.counted.flatMap((row): Value[] => {
      const value = valueAt(node, computed, row, at)
      return value === undefined || (isCounted && !isCounted(row)) ? [] : [value]
    })
    // Nothing has no mean, and no least.
    if (values.length === 0 && foot.figure !== 'sum' && foot.figure !== 'count') return { diagnostics: [] }
    const ready = { ...found.meaning.computable, mayBeInfinite: true }
    const { value } = computeOnce(ready, (name) => (name === 'values' ? values : share))
    const shown = showValue(value, ready.type, foot.figure === 'count' ? undefined : meaning.unit)
    return { shown: shown.text, diagnostics: [] }
  } catch (error) {
    return { diagnostics: [explainFailure(error, '')] }
  }
}

/** The share of a percentile, or why it cannot be read. */
function shareOf({ figure, share }: Foot): number | string {
  if (figure !== 'percentile') return 0
  try {
    const { value, dimension } = readQuantity(share?.trim() || USUAL_SHARE)
    if (dimension === NONE && value >= 0 && value <= 1) return value
  } catch (error) {
    if (!(error instanceof ReadError)) throw error
  }
  return words.percentileShare(USUAL_SHARE, share ?? '')
}

function conditionOf(engine: Engine, node: Node, table: CompiledTable, where: string | undefined): Condition {
  if (where === undefined || where.trim() === '') return { diagnostics: [] }
  const found = engine.compile(where, table.scope)
  const diagnostics = [...(found?.errors ?? [])]
  const computable = found?.meaning?.computable
  if (computable && computable.type.kind !== 'yes or no') diagnostics.push(problem(needsCondition, 0, where.length))
  if (!found || !computable || diagnostics.length > 0) return { diagnostics, waits: true }
  const { places } = table.plan
  const outside = found.uses.filter((name) => !places.has(name))
  if (outside.some((name) => !hasValue(engine, name))) return { diagnostics: [], waits: true }
  return { diagnostics: [], isCounted: rowCondition(engine, node, places, computable) }
}

const hasValue = (engine: Engine, name: string): boolean => {
  const node = engine.named(name)
  return node !== undefined && engine.state(node) === VALUE
}

/** A condition on one row; a row that lacks what it asks for does not meet it. */
function rowCondition(
  engine: Engine,
  node: Node,
  places: ReadonlyMap<string, number>,
  { program, inputs }: Computable,
): (row: number) => boolean {
  const slots = inputs.map((_, at) => at)
  const computed = rowsComputed(engine, node)
  const fixed = inputs.map((input): Value | number => {
    if (!('cell' in input)) return input.constant
    return places.has(input.cell) ? 0 : engine.value(engine.named(input.cell) as Node)
  })
  const fields = inputs.flatMap((input, at) => {
    const column = 'cell' in input ? places.get(input.cell) : undefined
    return column === undefined ? [] : [[at, column] as const]
  })
  return (row) => {
    const values = [...fixed]
    for (const [at, column] of fields) {
      const value = valueAt(node, computed, row, column)
      if (value === undefined) return false
      values[at] = value
    }
    try {
      return program(values, slots) === true
    } catch (error) {
      if (error instanceof ComputeError) return false
      throw error
    }
  }
}
