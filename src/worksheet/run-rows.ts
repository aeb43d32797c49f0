import { ComputeError, showValue, type Value } from '../language/index.ts'
import type { Schedule } from './document.ts'
import type { Engine } from './engine.ts'
import type { Node } from './node.ts'
import type { Original, Unread } from './run-plan.ts'
import { type RowAt, RowTrouble, type Source } from './run-source.ts'
import { columnLabel } from './schedule-columns.ts'
import { rowsComputed } from './schedule-standing.ts'
import { rowReader } from './schedule-table.ts'

/** Figures of what was done: a slip in one keeps no original out of the plan. */
const NOTED = new Set(['done', 'actual_time', 'actual_frames'])

/** The rows of a schedule as the planner takes them; blank ones are passed over. */
export function listOf(
  engine: Engine,
  node: Node,
  { columns, rows }: Schedule,
  sources: ReadonlyMap<string, Source>,
): { list: (Original | Unread)[]; remarks: Map<number, string> } {
  const { read } = rowReader(columns)
  const computed = rowsComputed(engine, node)
  const list: (Original | Unread)[] = []
  const remarks = new Map<number, string>()
  const worked = [...(computed?.figures ?? [])]
  for (let row = 0; row < rows.length; row++) {
    const reading = read(rows[row] as readonly string[])
    if (reading.isBlank) continue
    const values = [...reading.values]
    for (const [at, figures] of worked) values[at] = figures[row]
    const at: RowAt = {
      values,
      why: (place) => {
        const column = columns[place]
        const trouble = reading.troubles.find((one) => one.column === place)
        if (!column) return ''
        if (trouble) return trouble.empty ? '' : `${columnLabel(column)}: ${trouble.message}`
        const failure = computed?.failures.get(row)
        if (failure?.column === place) return `${columnLabel(column)}: ${failure.message}`
        return column.formula ? `${columnLabel(column)} has no figure in this row.` : ''
      },
    }
    list.push(originalOf(row, at, sources, (why) => remarks.set(row, why)))
  }
  return { list, remarks }
}

function originalOf(
  row: number,
  at: RowAt,
  sources: ReadonlyMap<string, Source>,
  remark: (why: string) => void,
): Original | Unread {
  const get = (name: string): Value | undefined => {
    const source = sources.get(name)
    if (!source) return undefined
    try {
      return source.read(at)
    } catch (error) {
      if (!(error instanceof ComputeError || error instanceof RowTrouble)) throw error
      if (!NOTED.has(name)) throw new RowTrouble(`${source.input.label}: ${error.message}`)
      remark(`${source.input.label}: ${error.message}`)
      return undefined
    }
  }
  const words = (name: string): string => {
    const value = get(name)
    if (value === undefined) return ''
    return typeof value === 'string' ? value.trim() : showValue(value, (sources.get(name) as Source).type).text
  }
  const figure = (name: string, least: 'above' | 'none under' | 'whole'): number | undefined => {
    const value = get(name) as number | undefined
    const sound =
      value === undefined ||
      (least === 'above' ? value > 0 : least === 'whole' ? value >= 1 && Number.isInteger(value) : value >= 0)
    if (sound) return value
    const label = sources.get(name)?.input.label ?? name
    const wanted = { above: 'more than 0', 'none under': '0 or more', whole: 'a whole number, 1 or more' }[least]
    if (!NOTED.has(name)) throw new RowTrouble(`${label}: it must be ${wanted}.`)
    remark(`${label}: it must be ${wanted}.`)
    return undefined
  }
  const needed = (name: string): number => {
    const value = figure(name, 'above')
    if (value === undefined) throw new RowTrouble(`${sources.get(name)?.input.label ?? name}: nothing is filled in.`)
    return value
  }
  const done = get('done')
  const marks = { row, done: typeof done === 'string' ? done.trim() !== '' : done === true }
  let title = `Row ${row + 1}`
  try {
    title = words('title') || title
    return {
      ...marks,
      title,
      width: needed('width'),
      height: needed('height'),
      sampling: needed('sampling'),
      thickness: figure('thickness', 'none under') ?? 0,
      exposure: words('exposure'),
      pages: figure('pages', 'whole') ?? 1,
      border: figure('border', 'none under') ?? 0,
      overlap: figure('overlap', 'none under'),
      turn: get('turn') !== false,
      frameTime: figure('frame_time', 'none under') ?? 0,
      originalTime: figure('original_time', 'none under') ?? 0,
      frameData: figure('frame_data', 'none under') ?? 0,
      actualTime: figure('actual_time', 'none under'),
      actualFrames: figure('actual_frames', 'none under'),
    }
  } catch (error) {
    if (!(error instanceof RowTrouble)) throw error
    return { ...marks, title, why: error.message }
  }
}
