import { LIBRARY } from '../functions/index.ts'
import { briefReadings, type SeriesEntry, secondsOf, withEntry } from '../worksheet/frame/frame-series.ts'
import { takenDifferences, takenInWords } from '../worksheet/frame/frame-taken.ts'
import { type Check, type CheckOutcome, type Frame, Sheet, type Worksheet } from '../worksheet/index.ts'
import type { MeasuredFile } from './frame-pool.ts'
import * as words from './words.ts'

/** The state of a frame by all checks together. */
type State = 'pass' | 'marginal' | 'fail' | 'waiting' | 'unreadable'

const GRAVEST: readonly State[] = ['pass', 'marginal', 'waiting', 'fail']

/** The table of a folder’s frames, in order of time, each with its state. */
export function gradeFrames(
  worksheet: Worksheet,
  frame: Frame,
  measured: readonly MeasuredFile[],
): { rows: string[][]; states: State[] } {
  const sheet = new Sheet(worksheet, LIBRARY)
  const checks = worksheet.cells.filter((cell): cell is Check => cell.kind === 'check')
  const figures = figureNames(measured)
  let series: readonly SeriesEntry[] | undefined = frame.series
  const graded = inOrderOfTime(measured).map((file) => {
    // Each frame is compared with those before it, the sheet’s own first, as if it had been dropped after them.
    if (series && file.readings) series = withEntry(series, entryOf(file, file.readings))
    const until = series && upTo(series, file.taken?.when)
    return grade(sheet, until ? { ...frame, series: until } : frame, checks, figures, file)
  })
  const heading = [
    words.reportHeads.file,
    words.reportHeads.taken,
    words.reportHeads.state,
    ...checks.map(({ label, name }) => label?.trim() || name),
    ...figures,
    words.reportHeads.differs,
    words.reportHeads.remarks,
    words.reportHeads.time,
  ]
  return { rows: [heading, ...graded.map(({ row }) => row)], states: graded.map(({ state }) => state) }
}

const entryOf = (
  { name, digest, taken }: MeasuredFile,
  readings: NonNullable<MeasuredFile['readings']>,
): SeriesEntry => ({
  name,
  digest,
  when: taken?.when ?? null,
  readings: briefReadings(withKeys(readings)),
})

/** What a frame is compared with: nothing that was taken after it. */
function upTo(series: readonly SeriesEntry[], when: string | null | undefined): SeriesEntry[] {
  const at = secondsOf(when) ?? Number.POSITIVE_INFINITY
  return series.filter((entry) => (secondsOf(entry.when) ?? Number.NEGATIVE_INFINITY) <= at)
}

/** By the time the camera wrote; those without one come last, by name. */
function inOrderOfTime(measured: readonly MeasuredFile[]): MeasuredFile[] {
  const key = ({ taken, name }: MeasuredFile): string => `${instant(taken?.when)} ${name}`
  return [...measured].sort((one, other) => (key(one) < key(other) ? -1 : 1))
}

/** A time as text that sorts; those without one sort last. */
function instant(when: string | null | undefined): string {
  const seconds = secondsOf(when)
  return seconds === undefined ? '~' : new Date(seconds * 1000).toISOString()
}

/** The plain figures of all readings, `light.spread`, in the order of the areas. */
function figureNames(measured: readonly MeasuredFile[]): string[] {
  const names = new Set<string>()
  for (const { readings } of measured)
    for (const [area, reading] of Object.entries(readings ?? {}))
      for (const [part, value] of Object.entries(reading))
        if (typeof value === 'number' || value === null || typeof value === 'string') names.add(`${area}.${part}`)
  return [...names]
}

function grade(
  sheet: Sheet,
  frame: Frame,
  checks: readonly Check[],
  figures: readonly string[],
  file: MeasuredFile,
): { row: string[]; state: State } {
  const { name, seconds, error, readings, pixels, taken } = file
  if (!readings || !pixels) {
    const blanks = [...checks, ...figures].map(() => '')
    return { row: [name, '', 'unreadable', ...blanks, '', error ?? '', seconds.toFixed(2)], state: 'unreadable' }
  }
  const picture = { name, size: 0, digest: '', pixels: { ...pixels }, taken: taken ? { ...taken } : null }
  sheet.apply({ do: 'replace', cell: { ...frame, picture, readings: withKeys(readings) } }, { merge: 'frames' })
  const outcomes = checks.map(({ id }) => sheet.check(id))
  const state = outcomes.reduce<State>((worst, outcome) => graver(worst, wordOf(outcome)), 'pass')
  const figure = (path: string): string => {
    const [area, part] = path.split('.') as [string, string]
    const value = (readings[area] as Record<string, unknown> | undefined)?.[part]
    return value === undefined || value === null ? '' : String(value)
  }
  const remarks = [
    ...outcomes.flatMap((outcome) => (wordOf(outcome) === 'pass' ? [] : [outcome.message])),
    ...(file.warnings ?? []),
    ...Object.entries(readings).flatMap(([area, reading]) =>
      ((reading as { warnings?: readonly string[] }).warnings ?? []).map((warning) => `${area}: ${warning}`),
    ),
  ]
  const unlike = takenDifferences(sheet.cells, { ...frame, picture }).map(takenInWords)
  const row = [
    name,
    taken?.when ?? '',
    state,
    ...outcomes.map(wordOf),
    ...figures.map(figure),
    unlike.join('; '),
    remarks.filter(Boolean).join('; '),
    seconds.toFixed(2),
  ]
  return { row, state }
}

/** A document’s records have own keys only. */
const withKeys = (readings: Readonly<Record<string, object>>): Record<string, Record<string, unknown>> =>
  Object.fromEntries(Object.entries(readings).map(([name, reading]) => [name, { ...reading }]))

const wordOf = ({ state }: CheckOutcome): State => (state === 'error' ? 'fail' : state)

const graver = (one: State, other: State): State => (GRAVEST.indexOf(other) > GRAVEST.indexOf(one) ? other : one)
