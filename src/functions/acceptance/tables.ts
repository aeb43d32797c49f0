import fadgi2016 from '../../../shared/reference/fadgi-2016.json'
import fadgi2023 from '../../../shared/reference/fadgi-2023.json'
import iso19264 from '../../../shared/reference/iso-19264-1.json'
import { Refusal } from '../../language/index.ts'
import { type Dimension, NONE, ReadError, readQuantity, readUnit } from '../../units/index.ts'

/** What a class of one metric allows, in coherent SI; with no bound at all, every value. */
export interface Limit {
  /** The value must be less. */
  readonly below?: number
  /** The value must be greater. */
  readonly above?: number
  /** The value may be equal or less. */
  readonly most?: number
  /** The value may be equal or greater. */
  readonly least?: number
}

/** What a value of one metric is graded by. */
export interface Grading {
  /** Class names, best first. */
  readonly classes: readonly string[]
  readonly dimension: Dimension
  /** The unit the limits are printed in; empty for a plain number. */
  readonly unit: string
  /** The metric is a difference of either sign, graded by its size. */
  readonly signed: boolean
  /** One limit a class, best first; null where the table has no such class. */
  readonly limits: readonly (Limit | null)[]
  /** Why the limits need checking in the document, where they were not read there. */
  readonly provenance?: string
}

/** A published table as shared/reference stores it. */
interface PublishedTable {
  readonly scheme: string
  readonly classes: readonly string[]
  /** The source of every limit that names no other. */
  readonly source: string
  readonly sources: Readonly<Record<string, { readonly status: string }>>
  readonly metrics: Readonly<Record<string, { readonly unit: string; readonly signed?: boolean }>>
  readonly materials: Readonly<Record<string, Material>>
}

interface Material {
  /** The heading of the guideline whose limits stand for others that were not found. */
  readonly of?: string
  /** For each metric one limit a class: `< 5`, `≥ 300`, `0.8 to 1.1`, empty for none. */
  readonly limits: Readonly<Record<string, readonly (string | null)[]>>
  readonly sources?: Readonly<Record<string, readonly string[]>>
}

/** The published tables; of a guideline’s editions the newest first. */
const TABLES: readonly PublishedTable[] = [fadgi2023, fadgi2016, iso19264]

/** A guideline’s name without its edition means the newest edition. */
const NEWEST: Readonly<Record<string, string>> = { fadgi: fadgi2023.scheme }

/** The published schemes by name, as `grade` takes them. */
export const SCHEMES: readonly string[] = TABLES.map(({ scheme }) => scheme)

/** A name as it is compared: without capitals, signs, spaces or the word for inches. */
const comparable = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll('×', 'x')
    .replace(/\b(in|inch|inches)\b/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, '')

const quoted = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ')

/** The entry of a record whose name matches, apart from capitals, spaces and signs. */
const entryOf = <T>(of: Readonly<Record<string, T>>, name: string): T | undefined =>
  Object.entries(of).find(([candidate]) => comparable(candidate) === comparable(name))?.[1]

/**
 * The limits of a metric: from a published table, or, where the scheme has a semicolon, from the studio’s own table.
 * @throws Refusal naming the argument where the scheme, material or metric is unknown, or the own table unreadable.
 */
export const gradingOf = (metric: string, scheme: string, material: string): Grading =>
  scheme.includes(';') ? ownGrading(metric, scheme) : publishedGrading(metric, scheme, material)

/** Whether the table grades this metric at all. */
export function grades(metric: string, scheme: string, material: string): boolean {
  if (scheme.includes(';')) return ownRows(scheme).rows.some(([name]) => comparable(name) === comparable(metric))
  return entryOf(materialOf(tableOf(scheme), material).limits, metric) !== undefined
}

function tableOf(scheme: string): PublishedTable {
  const name = NEWEST[comparable(scheme)] ?? scheme
  const table = TABLES.find((candidate) => comparable(candidate.scheme) === comparable(name))
  if (table) return table
  throw new Refusal(
    `“scheme” names no table: "${scheme}". Name one of ${quoted(SCHEMES)}, or write the studio’s own as "A, B; tone: 2, 3".`,
    'scheme',
  )
}

function materialOf(table: PublishedTable, material: string): Material {
  const found = materialIn(table, material)
  if (found) return found
  const others = TABLES.filter((other) => materialIn(other, material)).map(({ scheme }) => scheme)
  const elsewhere = others.length > 0 ? `, or grade it by ${quoted(others)}, which has it` : ''
  throw new Refusal(
    `“material” is "${material}", which the ${table.scheme} table does not have. Name one that it has: ${quoted(Object.keys(table.materials))}${elsewhere}.`,
    'material',
  )
}

const materialIn = ({ materials }: PublishedTable, name: string): Material | undefined =>
  entryOf(materials, name) ??
  Object.values(materials).find(({ of }) => of !== undefined && comparable(of) === comparable(name))

function publishedGrading(metric: string, scheme: string, material: string): Grading {
  const table = tableOf(scheme)
  const { limits, sources, of } = materialOf(table, material)
  const name = Object.keys(limits).find((candidate) => comparable(candidate) === comparable(metric))
  if (name === undefined)
    throw new Refusal(
      `“metric” is "${metric}", which the ${table.scheme} table does not have. It has ${quoted(Object.keys(limits))}.`,
      'metric',
    )
  const { unit, signed = false } = table.metrics[name] as { unit: string; signed?: boolean }
  const { factor, dimension } = unit === '' ? { factor: 1, dimension: NONE } : readUnit(unit)
  const provenance = provenanceOf(table, name, sources?.[name] ?? [table.source], of)
  return {
    classes: table.classes,
    dimension,
    unit,
    signed,
    limits: (limits[name] as readonly (string | null)[]).map((text) =>
      text === null ? null : readLimit(text, factor),
    ),
    ...(provenance === undefined ? {} : { provenance }),
  }
}

/** What to know of limits that were not read in the document they come from. */
function provenanceOf(
  table: PublishedTable,
  metric: string,
  sources: readonly string[],
  of: string | undefined,
): string | undefined {
  const statuses = sources.map((source) => table.sources[source]?.status ?? '')
  const how = statuses.some((status) => status.includes('memory'))
    ? 'some are from memory'
    : statuses.some((status) => status.includes('earlier edition'))
      ? 'they are those of an earlier edition, read in a translation'
      : statuses.some((status) => status.includes('secondary'))
        ? 'they were read in a published comparison, not in the document'
        : undefined
  const whose = of === undefined ? '' : ` They are the limits for "${of}"; those for other originals were not found.`
  return (
    how &&
    `Check the ${table.scheme} limits of "${metric}" in the document before acceptance depends on them: ${how}.${whose}`
  )
}

const BOUNDS = { '<': 'below', '>': 'above', '≤': 'most', '≥': 'least' } as const

/** A limit as a published table writes it, times the factor of its unit. */
function readLimit(text: string, factor: number): Limit {
  const [, sign, figure] = /^([<>≤≥]) ([\d.]+)$/.exec(text) ?? []
  if (sign) return { [BOUNDS[sign as keyof typeof BOUNDS]]: Number(figure) * factor }
  const [, least, most] = /^([\d.]+) to ([\d.]+)$/.exec(text) ?? []
  if (least) return { least: Number(least) * factor, most: Number(most) * factor }
  if (text === '') return {}
  throw new Error(`A published table holds the limit “${text}”, which cannot be read.`)
}

/** The classes and the rows of a studio’s own table, each row a metric’s name and its limits. */
function ownRows(scheme: string): { classes: readonly string[]; rows: readonly (readonly [string, string])[] } {
  const [first = '', ...rest] = scheme.split(';')
  const classes = first
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '')
  const rows = rest.filter((row) => row.trim() !== '')
  const unread = rows.find((row) => !row.includes(':'))
  if (classes.length === 0 || unread !== undefined)
    throw new Refusal(
      `The studio’s table ${unread === undefined ? 'names no class' : `has no colon in “${unread.trim()}”`}. Write the classes, best first, then each metric, a colon and its limits: "A, B; tone: 2, 3".`,
      'scheme',
    )
  return {
    classes,
    rows: rows.map((row) => [row.slice(0, row.indexOf(':')).trim(), row.slice(row.indexOf(':') + 1).trim()]),
  }
}

const OWN_SIGNS: Readonly<Record<string, keyof Limit>> = {
  '<': 'below',
  '<=': 'most',
  '≤': 'most',
  '>': 'above',
  '>=': 'least',
  '≥': 'least',
}

/**
 * A studio’s own table, as text: the classes, best first, then each metric with a limit a class, separated by
 * semicolons: `A, B, C; tone: 2, 3, 4; uniformity: < 3 %, 5 %, 8 %; sampling: >= 400 ppi, 300 ppi, 200 ppi`.
 * The first limit’s sign is that of the row; without one a limit is the most allowed. A value limited from above is
 * graded by its size, without its sign.
 */
function ownGrading(metric: string, scheme: string): Grading {
  const { classes, rows } = ownRows(scheme)
  const found = rows.find(([name]) => comparable(name) === comparable(metric))
  if (!found)
    throw new Refusal(
      `“metric” is "${metric}", which the studio’s table does not have. It has ${quoted(rows.map(([name]) => name))}.`,
      'metric',
    )
  const [, sign = '', text = ''] = /^(<=|>=|[<>≤≥])?\s*(.*)$/s.exec(found[1]) ?? []
  const typed = text.split(',').map((limit) => limit.trim())
  const read = typed.map((limit) => readOwnLimit(limit, metric))
  if (read.length !== classes.length)
    throw new Refusal(
      `"${metric}" has ${read.length} limits for ${classes.length} classes. Write one for each, with a decimal point, not a comma.`,
      'scheme',
    )
  const { dimension } = read[0] as { dimension: Dimension }
  if (read.some((limit) => limit.dimension !== dimension))
    throw new Refusal(`The limits of "${metric}" differ in kind of unit. Write them in one kind of unit.`, 'scheme')
  const bound = OWN_SIGNS[sign] ?? 'most'
  return {
    classes,
    dimension,
    unit: (typed[0] as string).replace(/^[\d.+\-−\s]*/, ''),
    signed: bound === 'most' || bound === 'below',
    limits: read.map(({ value }) => ({ [bound]: value })),
  }
}

function readOwnLimit(text: string, metric: string): { value: number; dimension: Dimension } {
  try {
    return readQuantity(text)
  } catch (error) {
    if (!(error instanceof ReadError)) throw error
    throw new Refusal(`The limit “${text}” of "${metric}" cannot be read: ${error.message}`, 'scheme')
  }
}
