import { type Comparison, calledIn, compare } from './compare.ts'
import { PUBLISHED, type PublishedSource, type PublishedValue } from './data.ts'

/** A published value beside ours, in words and figures, as the guide, the terminal and the validation page show it. */
export interface PublishedRow {
  readonly id: string
  readonly quantity: string
  readonly formula: string
  /** The figure as printed, with its unit: `46.8 ft`. */
  readonly published: string
  readonly ours: string
  /** ours − published, in the published unit; empty where texts are compared. */
  readonly difference: string
  readonly agrees: boolean
  /** Title, author and edition of the source, and the place in it. */
  readonly source: string
  /** Where the source was read. */
  readonly read_at: string
  /** Read in a quotation of the source. */
  readonly quoted: boolean
  readonly note?: string
}

/** Enough digits to see whether a figure agrees, without the noise of binary fractions: as many as are printed, or more. */
const SHOWN_DIGITS = 8
const MOST_DIGITS = 15
const digitsFor = (printed: string): number =>
  Math.min(MOST_DIGITS, Math.max(SHOWN_DIGITS, printed.replaceAll(/\D/g, '').length))

/** Every minus as one, of a figure and of its power of ten. */
const withMinus = (text: string): string => text.replaceAll('-', '−')

const figure = (value: number, digits: number): string => withMinus(String(Number(value.toPrecision(digits))))

/** A difference far below what the printed digits can show is the rounding of binary fractions. */
const withoutNoise = (difference: number, { tolerance = 0 }: PublishedValue): number =>
  Math.abs(difference) < 1e-6 * tolerance ? 0 : difference

const withUnit = (text: string, unit: string | undefined): string => (unit === undefined ? text : `${text} ${unit}`)

function sourceText({ title, by, edition }: PublishedSource, place: string | undefined): string {
  const where = place === undefined ? '' : `, ${place}`
  const from = [by, edition === 'n. d.' ? '' : edition].filter(Boolean).join(', ')
  return `${title} (${from})${where}`
}

function rowOf({ published, source, ours, difference, agrees }: Comparison): PublishedRow {
  const { id, quantity, formula, value, printed, unit, place, quoted = false, note } = published
  return {
    id,
    quantity,
    formula,
    published: withUnit(typeof value === 'number' ? withMinus(printed) : printed, unit),
    ours: typeof ours === 'number' ? withUnit(figure(ours, digitsFor(printed)), unit) : ours,
    difference: difference === null ? '' : withUnit(figure(withoutNoise(difference, published), 2), unit),
    agrees,
    source: sourceText(source, place),
    read_at: source.read_at,
    quoted,
    ...(note === undefined ? {} : { note }),
  }
}

/** Every published value, compared. */
export const publishedRows = (): readonly PublishedRow[] => PUBLISHED.map((value) => rowOf(compare(value)))

/** The published values whose formula calls a function, compared. */
export const publishedRowsOf = (name: string): readonly PublishedRow[] =>
  PUBLISHED.filter((value) => calledIn(value).includes(name)).map((value) => rowOf(compare(value)))

/** The ids of the published values that check each function. */
export function checkedFunctions(): ReadonlyMap<string, readonly string[]> {
  const byName = new Map<string, string[]>()
  for (const value of PUBLISHED)
    for (const name of calledIn(value)) byName.set(name, [...(byName.get(name) ?? []), value.id])
  return byName
}
