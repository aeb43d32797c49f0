import { ComputeError, showValue, type Value } from '../../language/index.ts'
import type { Engine } from '../engine/engine.ts'
import type { Node } from '../engine/node.ts'
import type { TableCell } from '../schema/document.ts'
import { columnLabel } from '../table/columns.ts'
import { type RowReading, rowReader } from '../table/read-table.ts'
import { rowsComputed } from '../table/row-status.ts'
import type { RowsComputed } from '../table/rows.ts'
import type { Original, UnreadableOriginal } from './plan.ts'
import { type RowAt, RowError, type Source } from './source.ts'
import * as words from './words.ts'

/** Figures of what was done: a mistake in one leaves the original in the plan. */
const NOTED = new Set(['done', 'actual_time', 'actual_frames'])

export interface ListedOriginals {
  readonly list: readonly (Original | UnreadableOriginal)[]
  /** Actual figures that cannot be read, by row. */
  readonly remarks: ReadonlyMap<number, string>
}

/** The rows of a table as the planner takes them; blank ones are passed over. */
export function listOf(
  engine: Engine,
  node: Node,
  { columns, rows }: TableCell,
  sources: ReadonlyMap<string, Source>,
): ListedOriginals {
  const { read } = rowReader(columns)
  const row = new Row(columns, rowsComputed(engine, node), sources)
  const list: (Original | UnreadableOriginal)[] = []
  for (let at = 0; at < rows.length; at++) {
    const reading = read(rows[at] as readonly string[])
    if (!reading.isBlank) list.push(row.original(at, reading))
  }
  return { list, remarks: row.remarks }
}

/** More pages of one original are taken to be a typing error. */
const MOST_PAGES = 1_000_000

type Limit = keyof typeof words.LIMITS
const isWithin = (value: number, limit: Limit): boolean =>
  limit === 'above'
    ? value > 0
    : limit === 'whole'
      ? value >= 1 && value <= MOST_PAGES && Number.isInteger(value)
      : value >= 0

/** One row after another: the same object for all of a hundred thousand. */
class Row implements RowAt {
  readonly values: (Value | undefined)[] = []
  readonly remarks = new Map<number, string>()
  private at = 0
  private reading: RowReading | undefined

  constructor(
    private readonly columns: TableCell['columns'],
    private readonly computed: RowsComputed | undefined,
    private readonly sources: ReadonlyMap<string, Source>,
  ) {}

  original(at: number, reading: RowReading): Original | UnreadableOriginal {
    this.at = at
    this.reading = reading
    for (let c = 0; c < this.columns.length; c++) this.values[c] = reading.values[c]
    if (this.computed) for (const [c, figures] of this.computed.figures) this.values[c] = figures[at]
    const finished = this.get('done')
    const done = typeof finished === 'string' ? finished.trim() !== '' : finished === true
    let title = words.row(at + 1)
    try {
      title = this.words('title') || title
      return {
        row: at,
        title,
        width: this.needed('width'),
        height: this.needed('height'),
        thickness: this.figure('thickness', 'none under') ?? 0,
        sampling: this.needed('sampling'),
        exposure: this.words('exposure'),
        pages: this.figure('pages', 'whole') ?? 1,
        border: this.figure('border', 'none under') ?? 0,
        overlap: this.figure('overlap', 'none under'),
        turn: this.get('turn') !== false,
        inOneFrame: this.get('one_frame') === true,
        frameTime: this.figure('frame_time', 'none under') ?? 0,
        originalTime: this.figure('original_time', 'none under') ?? 0,
        frameData: this.figure('frame_data', 'none under') ?? 0,
        done,
        actualTime: this.figure('actual_time', 'none under'),
        actualFrames: this.figure('actual_frames', 'none under'),
      }
    } catch (error) {
      if (!(error instanceof RowError)) throw error
      return { row: at, title, done, why: error.message }
    }
  }

  /** Why a column has no value in this row; empty where it is merely not filled in. */
  why(place: number): string {
    const column = this.columns[place]
    if (!column) return ''
    const problem = this.reading?.problems.find((one) => one.column === place)
    if (problem) return problem.empty ? '' : `${columnLabel(column)}: ${problem.message}`
    const failure = this.computed?.failures.get(this.at)
    if (failure?.column === place) return `${columnLabel(column)}: ${failure.message}`
    return column.formula ? words.noFigure(columnLabel(column)) : ''
  }

  private get(name: string): Value | undefined {
    const source = this.sources.get(name)
    if (!source) return undefined
    try {
      return source.read(this)
    } catch (error) {
      if (!(error instanceof ComputeError || error instanceof RowError)) throw error
      return this.refuse(name, error.message)
    }
  }

  private words(name: string): string {
    const value = this.get(name)
    if (value === undefined) return ''
    return typeof value === 'string' ? value.trim() : showValue(value, (this.sources.get(name) as Source).type).text
  }

  private figure(name: string, limit: Limit): number | undefined {
    const value = this.get(name) as number | undefined
    return value === undefined || isWithin(value, limit) ? value : this.refuse(name, words.mustBe(words.LIMITS[limit]))
  }

  private needed(name: string): number {
    return this.figure(name, 'above') ?? (this.refuse(name, words.emptyInput) as never)
  }

  /** Leaves the row out of the plan, or notes the mistake where it is in what was done. */
  private refuse(name: string, why: string): undefined {
    const message = `${this.sources.get(name)?.input.label ?? name}: ${why}`
    if (!NOTED.has(name)) throw new RowError(message)
    this.remarks.set(this.at, message)
    return undefined
  }
}
