import type { Engine } from '../engine/engine.ts'
import type { Run, TableCell } from '../schema/document.ts'
import { RUN_INPUTS } from './inputs.ts'
import type { Original, Pass, Rig, UnreadableOriginal } from './plan.ts'
import { rigOf } from './rig.ts'
import { type ListedOriginals, listOf } from './rows.ts'
import { type MissingInput, type Source, sourceOf } from './source.ts'
import { noFormula } from './words.ts'

/** The values of a run cell’s formulas, over the rows of its table and the sheet. */
export interface RunFeed {
  /** The table it is of; none where there is no such table. */
  readonly table: TableCell | undefined
  readonly list: readonly (Original | UnreadableOriginal)[]
  /** Undefined while anything is missing. */
  readonly rig: Rig | undefined
  /** The same originals in later set-ups of the sheet. */
  readonly later: readonly Pass[]
  /** What must be corrected or filled in before anything can be planned. */
  readonly missing: readonly MissingInput[]
  /** What is fed, but gives nothing (yet): the plan goes without. */
  readonly without: readonly MissingInput[]
  /** The names of the inputs that give something. */
  readonly fed: ReadonlySet<string>
  /** The column that is ticked when an original is done; none where another formula says so. */
  readonly ticks: number | undefined
  /** Actual figures that cannot be read, by row. */
  readonly remarks: ReadonlyMap<number, string>
}

/** The table a run is of. */
function tableOfRun(engine: Engine, run: Run): TableCell | undefined {
  const cell = run.of === undefined ? undefined : engine.named(run.of)?.cell
  return cell?.kind === 'table' ? cell : undefined
}

/** What a run is planned from: its originals, and the figures of the sheet. */
export function feedOf(engine: Engine, run: Run): RunFeed {
  const table = tableOfRun(engine, run)
  const first = fedBy(engine, run, table, run.from)
  const later = (run.set_ups ?? []).map(({ title, from }) => ({
    title,
    ...fedBy(engine, run, table, { ...run.from, ...from }),
  }))
  const missing = [first, ...later].flatMap((one) => one.missing)
  const isReady = table !== undefined && missing.length === 0
  return {
    table,
    list: first.list,
    rig: isReady ? first.rig : undefined,
    later: later.map(({ title, list, rig }) => ({ title, list, rig })),
    missing: once(missing),
    without: once([first, ...later].flatMap((one) => one.without)),
    fed: new Set(first.sources.keys()),
    ticks: table && ticked(table, run.from.done),
    remarks: first.remarks,
  }
}

interface Fed extends ListedOriginals {
  readonly sources: ReadonlyMap<string, Source>
  readonly rig: Rig
  readonly missing: readonly MissingInput[]
  readonly without: readonly MissingInput[]
}

function fedBy(engine: Engine, run: Run, table: TableCell | undefined, from: Run['from']): Fed {
  const node = run.of === undefined ? undefined : engine.named(run.of)
  const sources = new Map<string, Source>()
  const missing: MissingInput[] = []
  const without: MissingInput[] = []
  for (const input of RUN_INPUTS) {
    const formula = from[input.name]?.trim() ?? ''
    if (formula === '') {
      if (input.needed) missing.push({ input, why: noFormula })
      continue
    }
    const found = sourceOf(engine, input.over === 'row' && table ? node : undefined, table, input, formula)
    if ('why' in found) (input.needed ? missing : without).push(found)
    else sources.set(input.name, found)
  }
  const rig = rigOf(sources, missing, without)
  const listed =
    node && table && missing.length === 0 ? listOf(engine, node, table, sources) : { list: [], remarks: new Map() }
  return { sources, rig, missing, without, ...listed }
}

/** What is missing in several set-ups alike is said once. */
const once = (inputs: readonly MissingInput[]): MissingInput[] => [
  ...new Map(inputs.map((one) => [`${one.input.name} ${one.why}`, one])).values(),
]

/** The column a press can tick: named by itself, and filled in with ticks or moments. */
function ticked({ columns }: TableCell, done: string | undefined): number | undefined {
  const at = columns.findIndex(({ name }) => name === done?.trim())
  const entry = columns[at]?.entry
  return entry === 'tick' || entry === 'date and time' ? at : undefined
}
