import { LIBRARY } from '../functions/index.ts'
import { namesIn } from '../language/index.ts'
import { type Run, Sheet, type TableCell, type Worksheet } from '../worksheet/index.ts'
import type { Total } from '../worksheet/run/estimate.ts'
import { RUN_INPUTS } from '../worksheet/run/inputs.ts'
import type { PlannedSetup, RunPlan } from '../worksheet/run/plan.ts'
import { dataText, daysText, heightsText, meansText, ratioText, timeText } from '../worksheet/run/plan-text.ts'
import { type PlannedRun, runOf } from '../worksheet/run/sheet-run.ts'
import * as planWords from '../worksheet/run/words.ts'
import { columnLabel } from '../worksheet/table/columns.ts'
import { writeTable } from '../worksheet/table/csv.ts'
import { matchTable, takeRows } from '../worksheet/table/match-import.ts'
import { hasFormula } from '../worksheet/table/read-table.ts'
import { InputError } from './input-error.ts'
import { refuseOver, writeOut } from './output-file.ts'
import { readTableFile } from './read-table.ts'
import { readWorksheet, withSets } from './read-worksheet.ts'
import { printJson, printLines } from './report.ts'
import type { RunArguments } from './run-arguments.ts'
import { tableOf } from './run-table.ts'
import * as words from './words.ts'

/** How many are named on the terminal; all are in the table. */
const MOST_NAMED = 20
const MOST_SETUPS = 60

/** `run FILE.json`: plans the rows of a table, in short on the terminal and row by row in a file. Exit 1 where anything is not planned. */
export async function run({ subject, originals, out, left, sets, json }: RunArguments): Promise<number> {
  if (out !== undefined) refuseOver(out, [subject, originals ?? subject], 'plan')
  const read = withSets(await readWorksheet(subject), sets, subject)
  const cell = runIn(read, subject)
  const worksheet = originals === undefined ? read : withOriginals(read, cell, originals, subject)
  const planned = runOf(new Sheet(worksheet, LIBRARY), cell, { left: left || cell.left === true })
  const { plan, feed } = planned
  if (plan && out !== undefined) writeOut(out, writeTable(tableOf(plan, feed.remarks)))
  if (json) printJson(asData(planned))
  else printLines(plan ? summary(planned, plan, out) : missing(planned))
  return plan && plan.unplanned.length === 0 ? 0 : 1
}

function runIn({ cells }: Worksheet, path: string): Run {
  const cell = cells.find((one) => one.kind === 'run')
  if (!cell) throw new InputError(words.inFile(path, words.noRun))
  return cell
}

function withOriginals(worksheet: Worksheet, { of, from }: Run, path: string, sheetPath: string): Worksheet {
  const at = worksheet.cells.findIndex((cell) => cell.kind === 'table' && cell.name === of)
  const table = worksheet.cells[at] as TableCell | undefined
  if (!table) throw new InputError(words.inFile(sheetPath, words.noTableOfRun))
  const { rows } = readTableFile(path)
  const match = matchTable(table.columns, rows, true)
  const filled = new Set(match.sources.map(({ goal }) => goal))
  const needed = table.columns.filter((column, place) => !filled.has(place) && isNeeded(column.name, from))
  const missing = needed.filter((column) => !hasFormula(column))
  if (missing.length > 0) {
    const headings = match.sources.map(({ heading }) => `“${heading}”`)
    throw new InputError(words.inFile(path, words.noHeadings(missing.map(columnLabel), headings)))
  }
  return { ...worksheet, cells: worksheet.cells.with(at, takeRows(table, rows, match, 'instead')) }
}

/** Whether nothing could be planned without a column. */
const isNeeded = (column: string, from: Run['from']): boolean =>
  RUN_INPUTS.some(({ name, needed }) => needed && namesIn(from[name] ?? '').some((one) => one.name === column))

const missing = ({ feed }: PlannedRun): string[] => [
  feed.table ? words.inputsMissing : words.runWithoutTable,
  ...feed.missing.map(({ input, why }) => words.why(input.label, why)),
]

const wholeInWords = ({ count, setups, frames, all, days, data }: Total): string =>
  [
    words.inSetUps(planWords.originals(count), planWords.setUps(setups)),
    planWords.frames(frames),
    ...(all > 0 ? [`${timeText(all)}${days === undefined ? '' : ` (${daysText(days)})`}`] : []),
    ...(data > 0 ? [dataText(data)] : []),
  ].join(', ')

function setupLine(
  { magnification, exposure, means, heights, track, originals, frames, time }: PlannedSetup,
  at: number,
): string {
  const height =
    track === undefined
      ? ''
      : `${heights ? planWords.PLAN_HEADS.column.toLowerCase() : planWords.PLAN_HEADS.track.toLowerCase()} ${heightsText({ heights, track })}`
  const tiled = originals.filter((one) => one.tiled).length
  return [
    `  ${at + 1}: ${ratioText(magnification)}`,
    meansText(means),
    height,
    exposure,
    planWords.originals(originals.length) + (tiled > 0 ? words.inParts(tiled) : ''),
    planWords.frames(frames),
    time > 0 ? timeText(time) : '',
  ]
    .filter(Boolean)
    .join(', ')
}

const named = (lines: readonly string[], most: number, rest: string): string[] =>
  lines.length > most ? [...lines.slice(0, most), words.moreIn(lines.length - most, rest)] : [...lines]

function summary({ feed }: PlannedRun, plan: RunPlan, out: string | undefined): string[] {
  const { done, expected } = plan.progress
  const rest = out === undefined ? '' : words.inOut(out)
  return [
    words.plannedTotal(wholeInWords(plan.total)),
    ...named(plan.setups.map(setupLine), MOST_SETUPS, rest),
    ...(done.count > 0 ? [words.doneOf(done.count, done.count + plan.progress.left.count)] : []),
    ...(expected ? [words.leftAtRate(wholeInWords(expected))] : []),
    ...feed.without.map(({ input, why }) => words.plannedWithout(input.label, why)),
    ...(plan.unplanned.length > 0 ? [planWords.notPlanned(planWords.originals(plan.unplanned.length))] : []),
    ...named(
      plan.unplanned.map(({ row, title, why }) =>
        words.unplannedRow(row + 1, title === planWords.row(row + 1) ? '' : title, why),
      ),
      MOST_NAMED,
      rest,
    ),
    ...(out === undefined ? [] : [words.written(out)]),
  ]
}

/** The plan for other programs: numbers in coherent SI, data in bit. */
function asData({ feed, plan }: PlannedRun): object {
  return {
    missing: feed.missing.map(({ input, why }) => ({ input: input.name, why })),
    without: feed.without.map(({ input, why }) => ({ input: input.name, why })),
    setups:
      plan?.setups.map(({ magnification, exposure, means, heights, track, originals, frames, time, data }, at) => ({
        number: at + 1,
        magnification,
        exposure,
        means: means ? { kind: means.kind, pieces: means.pieces } : null,
        column_height: heights ?? null,
        original_to_sensor: track ?? null,
        originals: originals.length,
        in_parts: originals.filter((one) => one.tiled).length,
        frames,
        time,
        data,
      })) ?? [],
    total: plan?.total ?? null,
    progress: plan?.progress ?? null,
    unplanned: plan?.unplanned.map(({ row, title, cause, why }) => ({ row: row + 1, title, cause, why })) ?? [],
  }
}
