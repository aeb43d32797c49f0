import { ReadError, readQuantity } from '../../units/index.ts'

/** Makes a document of one version into one of the next. Pure: the document it is given stays as it was. */
export type Step = (document: Readonly<Record<string, unknown>>) => Record<string, unknown>

type Data = Readonly<Record<string, unknown>>

const isData = (value: unknown): value is Data => typeof value === 'object' && value !== null && !Array.isArray(value)

/** The same data with some keys under other names, in the same order. */
const withKeys = (data: Data, names: Readonly<Record<string, string>>): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(data).map(([key, value]) => [Object.hasOwn(names, key) ? (names[key] as string) : key, value]),
  )

/**
 * The kind `schedule` is called `table`, and what a check says when it passes is `passes`. A key that version 1 did not
 * know but preserved, and that version 2 gives a meaning, is preserved under another name.
 */
function toVersion2(document: Data): Record<string, unknown> {
  const renamed = withKeys(document, {
    parts: 'parts_of_version_1',
    setups: 'setups_of_version_1',
    levels_as_stops: 'levels_as_stops_of_version_1',
  })
  if (!Array.isArray(renamed.cells)) return renamed
  return { ...renamed, ...levelsOf(renamed.cells), cells: renamed.cells.map(cellToVersion2) }
}

/** Version 1 did not distinguish exposure values from stops: a sheet that has any computes with them as it did. */
const levelsOf = (cells: readonly unknown[]): Data =>
  /\bEV\b|\bexposure_value/.test(JSON.stringify(cells)) ? { levels_as_stops: true } : {}

function cellToVersion2(cell: unknown): unknown {
  if (!isData(cell)) return cell
  switch (cell.kind) {
    case 'schedule':
      return { ...cell, kind: 'table' }
    case 'check':
      return withKeys(withMarginInPercent(cell), { holds: 'passes', passes: 'passes_of_version_1' })
    case 'given':
      return withKeys(cell, { from: 'from_of_version_1' })
    default:
      return cell
  }
}

/**
 * The margin of a check of version 1 as the percentage it was taken for: a bare number was a ratio, a length was taken
 * in metres, and what could not be read was 10 %.
 */
function withMarginInPercent(check: Data): Data {
  const { margin, ...rest } = check
  if (typeof margin !== 'string') return check
  try {
    const { value, tolerance } = readQuantity(margin)
    if (value >= 0 && tolerance === undefined && margin.trim().endsWith('%')) return check
    return { ...check, margin: `${Number((100 * Math.max(0, value)).toPrecision(12))} %` }
  } catch (error) {
    if (!(error instanceof ReadError)) throw error
    return margin.trim() === '' ? rest : { ...rest, margin_of_version_1: margin }
  }
}

/** `STEPS[0]` makes version 1 into version 2, and so on. Append only: a document may come from any version. */
export const STEPS: readonly Step[] = [toVersion2]

/** Brings a document up to the version the steps lead to. What is no version of ours is left for the schema to name. */
export function migrate(
  document: Readonly<Record<string, unknown>>,
  steps: readonly Step[] = STEPS,
): Readonly<Record<string, unknown>> {
  const { version } = document
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) return document
  return steps.slice(version - 1).reduce((older, step, at) => ({ ...step(older), version: version + at + 1 }), document)
}
