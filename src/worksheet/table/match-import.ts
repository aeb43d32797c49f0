import { type DisplayUnit, readDisplayUnit, UnitTextError } from '../../units/index.ts'
import { declaredUnit } from '../document/read-given.ts'
import { MAX_COLUMNS, MAX_ROWS, MAX_TEXT_LENGTH } from '../format/format.ts'
import type { Column, TableCell } from '../schema/document.ts'
import { freeColumnName } from './columns.ts'
import { TableError } from './csv.ts'
import { nameOfLabel } from './name-of-label.ts'
import { hasFormula, isReadBy, readColumn } from './read-table.ts'
import * as words from './words.ts'

type Rows = readonly (readonly string[])[]

/** Where a column of a table from elsewhere goes: to a column there is, to one made for it, or nowhere. */
export type ImportTarget = number | 'new' | 'nowhere'

/** A column of a table from elsewhere. */
export interface Source {
  /** As written there, with its unit; empty where the table has no headings. */
  readonly heading: string
  /** The unit its heading gives, which its bare numbers take. */
  readonly unit: string | undefined
  readonly goal: ImportTarget
  /** What it would become as a new column. */
  readonly asNew: Column
}

export interface Match {
  /** The first row consists of headings. */
  readonly hasHeadings: boolean
  readonly sources: readonly Source[]
}

/** The most fields in a line: many more than a table can have, so that some may be left out. */
const WIDEST = 500
/** The number of rows read to find the type of a new column. */
const SAMPLE = 200

const evened = (heading: string): string =>
  heading
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[_\s]+/g, ' ')
    .replace(/[?:.*]+\s*$/, '')
    .trim()

interface Heading {
  readonly label: string
  readonly unit: string | undefined
}

/** `Width [mm]`, `width (cm)`, `width, in`, `width / mm`. */
const WITH_UNIT = /^(.*?)\s*(?:\[([^[\]]+)\]|\(([^()]+(?:\([^()]*\))?)\)|,\s*(\S.*)|\s\/\s*(\S.*))\s*$/

/** `Width mm`, `width_mm`, `width in cm`: of other headings the last word need not be a unit. */
const WITH_BARE_UNIT = /^(.*?)(?:[\s_]+in)?[\s_]+([^\s_]+)$/

/** A heading of one of these columns with a unit of its kind as its last word. */
function bareHeading(columns: readonly Column[], heading: string): Heading | undefined {
  const [, label, unit] = WITH_BARE_UNIT.exec(heading.trim()) ?? []
  if (label === undefined || unit === undefined || !isUnit(unit)) return undefined
  const at = columnNamed(columns, label)
  const own = at === undefined ? undefined : declaredUnit(columns[at]?.unit).unit
  return own && readDisplayUnit(unit).dimension === own.dimension ? { label, unit } : undefined
}

/** A heading apart from the unit behind it. */
export function readHeading(heading: string): Heading {
  const [, label, ...units] = WITH_UNIT.exec(heading.trim()) ?? []
  const unit = units.find((one) => one !== undefined)?.trim()
  if (label === undefined || unit === undefined || unit.length > 40 || !isUnit(unit))
    return { label: heading.trim(), unit: undefined }
  return { label: label.trim(), unit }
}

function isUnit(text: string): boolean {
  try {
    readDisplayUnit(text)
    return true
  } catch (error) {
    if (error instanceof UnitTextError) return false
    throw error
  }
}

/** Finds where the columns of a table go; `hasHeadings` where the user has said so. Throws TableError where it is too wide. */
export function matchTable(columns: readonly Column[], rows: Rows, said?: boolean): Match {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0)
  if (width > WIDEST) throw new TableError(words.tooWide(width, WIDEST))
  const hasHeadings = said ?? seemsHeaded(columns, rows)
  const [first = []] = rows
  const body = hasHeadings ? rows.slice(1) : rows
  const taken = new Set<number>()
  const made: Column[] = []
  const fillable = columns.flatMap((column, at) => (hasFormula(column) ? [] : [at]))
  const sources = Array.from({ length: width }, (_, at): Source => {
    const heading = hasHeadings ? (first[at] ?? '').trim() : ''
    const { unit } = bareHeading(columns, heading) ?? readHeading(heading)
    const found = hasHeadings ? columnFor(columns, heading) : fillable[at]
    const free = found !== undefined && !taken.has(found) ? found : undefined
    if (free !== undefined) taken.add(free)
    const isNothing = heading === '' && body.every((row) => (row[at] ?? '').trim() === '')
    const goal: ImportTarget = free ?? (isNothing ? 'nowhere' : 'new')
    const asNew = newColumn(heading, at, body, [...columns, ...made])
    if (goal === 'new') made.push(asNew)
    // What is worked out here is not taken from elsewhere.
    const stays = typeof goal === 'number' && hasFormula(columns[goal] as Column)
    return { heading, unit, goal: stays ? 'nowhere' : goal, asNew }
  })
  return { hasHeadings, sources }
}

/** The column a heading names, by label or name, with or without a unit behind it. */
function columnFor(columns: readonly Column[], heading: string): number | undefined {
  return (
    columnNamed(columns, heading) ??
    columnNamed(columns, readHeading(heading).label) ??
    columnNamed(columns, bareHeading(columns, heading)?.label ?? '')
  )
}

function columnNamed(columns: readonly Column[], called: string): number | undefined {
  const target = evened(called)
  const at = columns.findIndex(({ label, name }) => evened(label ?? '') === target || evened(name) === target)
  return target === '' || at < 0 ? undefined : at
}

/** Whether the first row looks like headings: it names a column, or cannot be read where the next one can. */
function seemsHeaded(columns: readonly Column[], rows: Rows): boolean {
  const [first, second] = rows
  if (!first) return false
  if (first.some((heading) => columnFor(columns, heading) !== undefined)) return true
  if (columns.length === 0)
    return (
      rows.length > 1 &&
      first.every((heading) => !/^[\s\d.,+−-]*\d[\s\d.,]*$/.test(heading)) &&
      first.some((heading) => heading.trim() !== '')
    )
  const fillable = columns.filter((column) => !hasFormula(column))
  const unread = (row: readonly string[]): number =>
    fillable.filter((column, at) => (row[at] ?? '').trim() !== '' && !canRead(column, row[at] as string)).length
  return second !== undefined && unread(first) > unread(second)
}

const canRead = (column: Column, text: string): boolean => isReadBy(readColumn(column).read, text)

/** A column as the fields of a table suggest it. */
function newColumn(heading: string, at: number, body: Rows, others: readonly Column[]): Column {
  const read = readHeading(heading)
  const fields = body.slice(0, SAMPLE).map((row) => (row[at] ?? '').trim())
  const filled = fields.filter((field) => field !== '')
  const mayBeEmpty = filled.length < fields.length || filled.length === 0 ? { may_be_empty: true } : {}
  const named = (label: string): Column => {
    const name = freeColumnName(nameOfLabel(label) || `column_${at + 1}`, others)
    return label === '' ? { name } : { name, label }
  }
  const readable = (column: Column): number => filled.filter((field) => canRead(column, field)).length
  if (read.unit !== undefined) {
    const quantity: Column = { ...named(read.label), unit: read.unit }
    // “Town (K)” is no temperature.
    if (readable(quantity) * 2 >= filled.length) return { ...quantity, ...mayBeEmpty }
  }
  const base = named(heading)
  const all = (column: Column): boolean => filled.length > 0 && readable(column) === filled.length
  // A time such as `10:30` can be read as a ratio, so moments come first.
  for (const entry of ['date', 'time', 'date and time'] as const)
    if (all({ ...base, entry }) && !isRatios(heading, filled)) return { ...base, entry, ...mayBeEmpty }
  if (all(base)) return { ...base, ...mayBeEmpty }
  if (filled.length > 0 && filled.every((field) => /^(yes|no|true|false)$/i.test(field)))
    return { ...base, entry: 'tick' }
  return { ...base, entry: 'text', ...mayBeEmpty }
}

/** Whether fields such as `1:05` and `1:10` are magnifications: their heading says so, or all of them start with 1. */
const isRatios = (heading: string, filled: readonly string[]): boolean =>
  filled.every((field) => /^\d+:\d+$/.test(field)) &&
  (/\b(?:ratio|scale|magnif|reproduction)/i.test(heading) || filled.every((field) => /^1:[1-9]\d?$/.test(field)))

const isFilled = (row: readonly string[]): boolean => row.some((field) => field.trim() !== '')

/** The columns that a table from elsewhere does not have, though every row needs a value in them. */
export const missingColumns = (columns: readonly Column[], { sources }: Match): readonly number[] =>
  columns.flatMap((column, at) => {
    const isNeeded =
      !hasFormula(column) && column.entry !== 'tick' && column.may_be_empty !== true && !column.default?.trim()
    return isNeeded && !sources.some(({ goal }) => goal === at) ? [at] : []
  })

/** The same columns with one value each for every row that has none of its own. */
export const withDefaults = (cell: TableCell, values: ReadonlyMap<number, string>): TableCell => ({
  ...cell,
  columns: cell.columns.map((column, at) => {
    const value = values.get(at)?.trim()
    return value ? { ...column, default: value } : column
  }),
})

/** A table cell with the rows of a text table below its own, or in their place. Throws TableError where there would be too many. */
export function takeTable(cell: TableCell, rows: Rows, match: Match, how: 'below' | 'instead'): TableCell {
  const filled = rows.filter((row, at) => (match.hasHeadings && at === 0) || isFilled(row))
  return fitted(takeRows(cell, filled, match, how))
}

/** The same for any number of rows, with blank rows left in place: for tables that are not saved in a worksheet. */
export function takeRows(cell: TableCell, rows: Rows, match: Match, how: 'below' | 'instead'): TableCell {
  const { hasHeadings, sources } = match
  const columns = [...cell.columns]
  const goals = sources.map((source): number | undefined => {
    if (source.goal === 'nowhere') return undefined
    if (source.goal !== 'new') return source.goal
    const { asNew } = source
    // Rows there are have nothing in it.
    const hasGaps = how === 'below' && cell.rows.length > 0 && asNew.entry !== 'tick'
    columns.push({
      ...asNew,
      name: freeColumnName(asNew.name, columns),
      ...(hasGaps ? { may_be_empty: true } : {}),
    })
    return columns.length - 1
  })
  const suffixes = sources.map((source, at) => unitToAdd(columns[goals[at] as number], source.unit))
  const taken = (hasHeadings ? rows.slice(1) : rows).map((row, r) => {
    const fields: string[] = new Array(columns.length).fill('')
    row.forEach((field, at) => {
      const goal = goals[at]
      if (goal === undefined) return
      refuseLong(field, r + (hasHeadings ? 2 : 1), sources[at]?.heading ?? '')
      const suffix = suffixes[at]
      fields[goal] = suffix !== undefined && BARE.test(field) ? `${field.trim()} ${suffix}` : field
    })
    return fields
  })
  const before = how === 'instead' ? [] : cell.rows.filter(isFilled)
  return { ...cell, columns, rows: [...before, ...taken] }
}

/** A number without a unit, in any notation; the field reports what cannot be read. */
const BARE = /^\s*[+\-−]?[\d.,\u00a0\u2009\u202f]*\d\s*$/

/** The unit to add to a bare number, so that it means in its new column what it meant under its heading. */
function unitToAdd(column: Column | undefined, unit: string | undefined): string | undefined {
  if (!column || unit === undefined || (column.entry ?? 'quantity') !== 'quantity') return undefined
  const given = readDisplayUnit(unit)
  const { unit: own } = declaredUnit(column.unit)
  return own && isSame(own, given) ? undefined : given.notation ? undefined : bracketed(unit)
}

const isSame = (a: DisplayUnit, b: DisplayUnit): boolean =>
  a.dimension === b.dimension && a.factor === b.factor && a.offset === b.offset && a.notation === b.notation

/** Units of several parts go in brackets after a number. */
const bracketed = (unit: string): string => (/[\s/·*]/.test(unit) ? `[${unit}]` : unit)

function refuseLong(field: string, line: number, heading: string): void {
  if (field.length > MAX_TEXT_LENGTH)
    throw new TableError(words.fieldTooLong(line, heading, field.length, MAX_TEXT_LENGTH))
}

/** Puts fields copied from elsewhere into a table, from one field on to the right and down; rows are added as needed. */
export function pasteAt(cell: TableCell, rows: Rows, row: number, column: number): TableCell {
  const next = cell.rows.map((fields) => fields)
  rows.forEach((from, r) => {
    const before = next[row + r] ?? []
    const fields = cell.columns.map((_, at) => before[at] ?? '')
    from.forEach((text, c) => {
      const at = column + c
      const into = cell.columns[at]
      refuseLong(text, r + 1, '')
      if (into && !hasFormula(into)) fields[at] = text
    })
    next[row + r] = fields
  })
  return fitted({ ...cell, rows: next })
}

/** A worksheet's file has at most 8 million characters, and each field also takes its indent, quotes and comma. */
const MOST_CHARACTERS = 6_000_000
const CHARACTERS_AROUND_A_FIELD = 14

/** Throws TableError where a table would have too many rows, columns or characters. */
function fitted(cell: TableCell): TableCell {
  if (cell.rows.length > MAX_ROWS) throw new TableError(words.tooManyRows(cell.rows.length, MAX_ROWS))
  if (cell.columns.length > MAX_COLUMNS) throw new TableError(words.tooManyColumns(cell.columns.length, MAX_COLUMNS))
  let length = 0
  for (const row of cell.rows) for (const field of row) length += field.length + CHARACTERS_AROUND_A_FIELD
  if (length > MOST_CHARACTERS) throw new TableError(words.tooLargeForSheet)
  return cell
}
