import fadgi from '../../../shared/reference/fadgi-2023.json'
import iso19264 from '../../../shared/reference/iso-19264-1.json'
import { Refusal } from '../../language/index.ts'
import { aKind, type Dimension, NONE, ReadError, readQuantity, readUnit } from '../../units/index.ts'

/** A class's limit, in the metric's unit: at most `most`, at least `least`, or between the two. */
interface Limit {
  readonly most?: number
  readonly least?: number
  readonly source: string
}

interface Metric {
  readonly about: string
  readonly unit: string
  /** A difference of either sign, graded by its size. */
  readonly signed?: boolean
  /** One limit a class, best first. */
  readonly limits: readonly Limit[]
}

interface Table {
  readonly title: string
  readonly scheme: string
  readonly classes: readonly string[]
  readonly materials: Readonly<Record<string, { readonly metrics: Readonly<Record<string, Metric>> }>>
}

const TABLES: readonly Table[] = [fadgi, iso19264]

/** The published schemes by name, as `grade` takes them. */
export const SCHEMES: readonly string[] = TABLES.map(({ scheme }) => scheme)

/** Every metric the published tables grade, with its unit, for the guide and for completion. */
export const METRICS: readonly string[] = [
  ...new Set(
    TABLES.flatMap(({ materials }) => Object.values(materials).flatMap(({ metrics }) => Object.keys(metrics))),
  ),
]

/** What a value is measured against: limits in coherent SI, best class first. */
interface Grading {
  readonly classes: readonly string[]
  readonly dimension: Dimension
  readonly unit: string
  readonly signed: boolean
  readonly limits: readonly { readonly most?: number; readonly least?: number }[]
}

const key = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, ' ')
const quoted = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ')

/** The best class whose limit holds (a value on the limit holds), else `below`. */
export function gradeValue(
  metric: string,
  value: number,
  dimension: Dimension,
  scheme: string,
  material: string,
): string {
  const grading = scheme.includes(';') ? ownGrading(metric, scheme) : published(metric, scheme, material)
  if (grading.dimension !== dimension)
    throw new Refusal(
      `"${metric}" is graded ${grading.dimension === NONE ? `as a plain number${grading.unit === '%' ? ' or in %' : ''}` : `in ${grading.unit}`}; this is ${aKind(dimension)}.`,
      'value',
    )
  const measured = grading.signed ? Math.abs(value) : value
  // A limit typed as 1.5 and a value computed as 1.5000000000000002 are the same.
  const slack = (limit: number): number => 1e-9 * Math.abs(limit)
  const place = grading.limits.findIndex(
    ({ most, least }) =>
      (most === undefined || measured <= most + slack(most)) &&
      (least === undefined || measured >= least - slack(least)),
  )
  return place < 0 ? 'below' : (grading.classes[place] as string)
}

function published(metric: string, scheme: string, material: string): Grading {
  const table = TABLES.find((candidate) => key(candidate.scheme) === key(scheme))
  if (!table)
    throw new Refusal(
      `No table is called "${scheme}": ${quoted(SCHEMES)} are here, or give the studio’s own as "A, B; tone: 2, 3".`,
      'scheme',
    )
  const ofMaterial = Object.entries(table.materials).find(([name]) => key(name) === key(material))?.[1]
  if (!ofMaterial)
    throw new Refusal(
      `The ${table.scheme} table here has no "${material}", only ${quoted(Object.keys(table.materials))}.`,
      'material',
    )
  const found = Object.entries(ofMaterial.metrics).find(([name]) => key(name) === key(metric))?.[1]
  if (!found)
    throw new Refusal(
      `The ${table.scheme} table here has no "${metric}", only ${quoted(Object.keys(ofMaterial.metrics))}.`,
      'metric',
    )
  const { factor, dimension } = found.unit === '' ? { factor: 1, dimension: NONE } : readUnit(found.unit)
  return {
    classes: table.classes,
    dimension,
    unit: found.unit,
    signed: found.signed ?? false,
    limits: found.limits.map(({ most, least }) => ({
      ...(most === undefined ? {} : { most: most * factor }),
      ...(least === undefined ? {} : { least: least * factor }),
    })),
  }
}

/**
 * A studio's own table, as text: the classes, best first, then each metric with a limit a class, parted by semicolons:
 * `A, B, C; tone: 2, 3, 4; uniformity: 3 %, 5 %, 8 %; sampling: >= 400 ppi, 300 ppi, 200 ppi`.
 * A limit is the most allowed; after `>=` the least. A most-limited value is graded by its size, whatever its sign.
 */
function ownGrading(metric: string, scheme: string): Grading {
  const [first = '', ...rest] = scheme.split(';')
  const classes = first
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '')
  const rows = rest.filter((row) => row.trim() !== '').map((row) => ({ row, colon: row.indexOf(':') }))
  const unread = rows.find(({ colon }) => colon < 0)
  if (classes.length === 0 || unread)
    throw new Refusal(
      `The studio’s table reads as "A, B; tone: 2, 3": the classes, best first, then each metric, a colon and its limits${unread ? `; «${unread.row.trim()}» has no colon` : ''}.`,
      'scheme',
    )
  const found = rows.find(({ row, colon }) => key(row.slice(0, colon)) === key(metric))
  if (!found)
    throw new Refusal(
      `The studio’s table has no "${metric}", only ${quoted(rows.map(({ row, colon }) => row.slice(0, colon).trim()))}.`,
      'metric',
    )
  const text = found.row.slice(found.colon + 1).trim()
  const atLeast = /^(>=|≥)/.test(text)
  const typed = text
    .replace(/^(>=|≥|<=|≤)/, '')
    .split(',')
    .map((limit) => limit.trim())
  const limits = typed.map((limit) => readLimit(limit, metric))
  if (limits.length !== classes.length)
    throw new Refusal(
      `"${metric}" has ${limits.length} limits for ${classes.length} classes: give one for each (with a decimal point, not a comma).`,
      'scheme',
    )
  const dimension = (limits[0] as { dimension: Dimension }).dimension
  if (limits.some((limit) => limit.dimension !== dimension))
    throw new Refusal(`The limits of "${metric}" are not all in one kind of unit.`, 'scheme')
  return {
    classes,
    dimension,
    unit: (typed[0] as string).replace(/^[\d.+\-−\s]*/, ''),
    signed: !atLeast,
    limits: limits.map(({ value }) => (atLeast ? { least: value } : { most: value })),
  }
}

function readLimit(text: string, metric: string): { value: number; dimension: Dimension } {
  try {
    return readQuantity(text)
  } catch (error) {
    if (!(error instanceof ReadError)) throw error
    throw new Refusal(`The limit «${text}» of "${metric}" cannot be read: ${error.message}`, 'scheme')
  }
}
