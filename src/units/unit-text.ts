import { type Dimension, NONE } from './dimension.ts'
import { inOtherCase, nearest } from './nearest.ts'
import { EVERYDAY, findUnit, sameSigns, unitSpellings } from './table.ts'
import * as words from './words.ts'

/** A unit or a product of units, as written in brackets or as a cell's heading. */
export interface CompoundUnit {
  readonly dimension: Dimension
  /** How many coherent SI units one of it is. */
  readonly factor: number
  /** Added after scaling; only a lone degree Celsius has one. */
  readonly offset: number
  /** The unit as shown: known symbols, raised powers, one slash. */
  readonly symbol: string
}

/** What is wrong in a unit's text, where, and what to write there instead. */
export class UnitTextError extends Error {
  constructor(
    message: string,
    readonly from: number,
    readonly to: number,
    /** Takes the place of the text from `from` to `to`. */
    readonly fix?: string,
  ) {
    super(message)
  }
}

const LONGEST = 200

const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹'
const raised = (power: number): string =>
  power === 1 ? '' : `${power < 0 ? '⁻' : ''}${[...String(Math.abs(power))].map((d) => RAISED[+d]).join('')}`

const TOKEN =
  /\s*(?:(?<power>[⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+|\^\s*[-−]?\d+)|(?<sign>[/()·*])|(?<one>1(?![\d.]))|(?<word>[^\s/()·*^⁻⁰¹²³⁴⁵⁶⁷⁸⁹\d]+))/uy

interface Token {
  readonly kind: 'power' | 'sign' | 'one' | 'word'
  readonly text: string
  readonly from: number
  readonly to: number
}

function tokens(text: string): Token[] {
  const found: Token[] = []
  let at = 0
  const end = text.trimEnd().length
  while (at < end) {
    TOKEN.lastIndex = at
    const match = TOKEN.exec(text)
    if (!match?.groups) throw new UnitTextError(words.notPartOfUnit(text.slice(at, end)), at, end)
    const [kind, part] = Object.entries(match.groups).find(([, value]) => value !== undefined) as [
      Token['kind'],
      string,
    ]
    at = TOKEN.lastIndex
    found.push({ kind, text: part, from: at - part.length, to: at })
  }
  return found
}

function powerOf(text: string): number {
  const plain = text
    .replace('^', '')
    .replace(/[⁻−]/g, '-')
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/g, (c) => String(RAISED.indexOf(c)))
  return Number(plain)
}

/** The nearest spelling that is a unit, for a message. */
export const nearestUnit = (word: string): string | undefined =>
  HABITS.get(word) ?? inOtherCase(word, EVERYDAY) ?? nearest(sameSigns(word), unitSpellings())

/** Signs in daily use for units that have a letter symbol here; ′ and ″ are angles. */
const HABITS: ReadonlyMap<string, string> = new Map([
  ['"', 'in'],
  ['”', 'in'],
  ["'", 'ft'],
  ['’', 'ft'],
])

interface Part {
  readonly symbol: string
  readonly power: number
}

/** Too much behind a slash, which parentheses around all of it put right. */
function badBelow(message: string, text: string, list: readonly Token[]): UnitTextError {
  const from = (list.find((token) => token.text === '/') as Token).to
  const inside = `(${text
    .slice(from)
    .replaceAll(/[\s/()]+/g, ' ')
    .trim()})`
  return new UnitTextError(message, from, text.length, isUnit(text.slice(0, from) + inside) ? inside : undefined)
}

/** Whether a text is a unit. */
export function isUnit(text: string): boolean {
  try {
    readUnit(text)
    return true
  } catch (error) {
    if (error instanceof UnitTextError) return false
    throw error
  }
}

function refuse(message: string, { from, to }: Token, fix?: string): never {
  throw new UnitTextError(message, from, to, fix)
}

/**
 * Reads a unit: symbols with whole powers, multiplied by a space, `·` or `*`, at most one `/`, parentheses below it.
 * `lx h`, `cd/m^2`, `W/(m² K)`, `1/m`. Throws UnitTextError with the span inside `text`.
 */
export function readUnit(text: string): CompoundUnit {
  if (text.length > LONGEST) throw new UnitTextError(words.unitTooLong(LONGEST), LONGEST, text.length)
  const list = tokens(text)
  if (list.length === 0) throw new UnitTextError(words.unitMissing, 0, text.length)
  let dimension = NONE
  let factor = 1
  let offset = 0
  const above: Part[] = []
  const below: Part[] = []
  let under = false
  let open: Token | undefined
  let closed = false
  for (let i = 0; i < list.length; i++) {
    const token = list[i] as Token
    if (token.text === '/') {
      if (under) throw badBelow(words.oneSlash, text, list)
      if (i === 0) refuse(words.startsWithSlash, token)
      under = true
    } else if (token.text === '(') {
      if (list[i - 1]?.text !== '/') refuse(words.parenthesesAfterSlash, token)
      open = token
    } else if (token.text === ')') {
      if (!open || closed || list[i - 1]?.text === '(') refuse(words.closesNothing, token)
      closed = true
    } else if (token.kind === 'sign') {
      if (!/^[^/(·*]/.test(list[i - 1]?.text ?? '') || list[i + 1]?.kind !== 'word')
        refuse(words.joinsTwoUnits(token.text), token)
    } else if (token.kind === 'power') {
      refuse(words.powerAfterUnit(token.text), token)
    } else if (token.kind === 'one') {
      if (list[i + 1]?.text !== '/' || i > 0) refuse(words.numberInUnit, token)
    } else {
      if (closed || (under && !open && below.length > 0)) throw badBelow(words.parenthesesBelow, text, list)
      const unit = findUnit(token.text)
      if (!unit) {
        const near = nearestUnit(token.text)
        refuse(words.unknownUnit(token.text, near), token, near)
      }
      const next = list[i + 1]
      let power = 1
      if (next?.kind === 'power') {
        power = powerOf(next.text)
        if (!Number.isInteger(power) || power === 0 || Math.abs(power) > 12) refuse(words.wholePower, next)
        i++
      }
      if (unit.offset !== 0) offset = unit.offset
      const signed = under ? -power : power
      dimension = dimension.times(unit.dimension.power(signed))
      factor *= unit.factor ** signed
      ;(under ? below : above).push({ symbol: unit.symbol, power })
    }
  }
  if (open && !closed) refuse(words.neverClosed, open)
  if ((under ? below : above).length === 0) refuse(words.unitMissing, list.at(-1) as Token)
  if (!(factor > 0 && Number.isFinite(factor))) throw new UnitTextError(words.unitTooLarge, 0, text.length)
  const write = (parts: readonly Part[]): string => parts.map((p) => p.symbol + raised(p.power)).join(' ')
  const lower = below.length > 1 ? `(${write(below)})` : write(below)
  const symbol = under ? `${write(above) || '1'}/${lower}` : write(above)
  if (offset !== 0 && (under || above.length > 1 || above[0]?.power !== 1))
    throw new UnitTextError(words.celsiusAlone, 0, text.length, symbol.replaceAll('°C', 'K'))
  return { dimension, factor, offset, symbol }
}
