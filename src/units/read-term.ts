import type { Dimension } from './dimension.ts'
import * as D from './dimension.ts'
import { clip, ReadError } from './read-error.ts'
import { type CompoundUnit, readUnit, UnitTextError } from './unit-text.ts'
import * as words from './words.ts'

const GROUP = '[\\u00a0\\u2009\\u202f]'
/** A number as typed, its thousands perhaps grouped by spaces that do not break. */
export const NUMBER = `(?:\\d+(?:${GROUP}\\d+)*)(?:[.,]\\d+)?(?:[eE][+\\-]?\\d+)?`
const SIGNED = new RegExp(`^[+\\-]?${NUMBER}`)
const FRACTION = new RegExp(`^([+\\-]?)(?:(\\d+)\\s+)?(${NUMBER})\\s*/\\s*(${NUMBER})(?!\\s*\\d)`)

/** The number that a text of digits is: spaces between thousands are left out, a decimal comma is a point. */
export const toNumber = (text: string): number => Number(text.replace(new RegExp(GROUP, 'g'), '').replace(',', '.'))

/** A number with the unit behind it. */
export interface Term {
  value: number
  dimension: Dimension
  /** Undefined where no unit was typed. */
  unit: CompoundUnit | undefined
  to: number
}

/** The place of the next sign that is not a space, from `at` on. */
export const skipSpaces = (text: string, at: number): number =>
  at + (/^\s*/.exec(text.slice(at)) as RegExpExecArray)[0].length

/** A number or a fraction and the unit behind it, up to the next number or the end. */
export function readTerm(text: string, at: number, end: number): Term {
  const rest = text.slice(at, end)
  let value: number
  let length: number
  const fraction = FRACTION.exec(rest)
  if (fraction) {
    const [all, sign, whole, above, below] = fraction as unknown as [string, string, string | undefined, string, string]
    value = (sign === '-' ? -1 : 1) * ((whole ? toNumber(whole) : 0) + toNumber(above) / toNumber(below))
    length = all.length
  } else {
    const sign = /^[+-]\s+/.exec(rest)?.[0].length ?? 0
    const match = SIGNED.exec(sign ? rest[0] + rest.slice(sign) : rest)
    if (!match) throw noNumber(text, at, end)
    value = toNumber(match[0])
    length = match[0].length + (sign ? sign - 1 : 0)
  }
  const numberEnd = at + length
  if (/^[.,]/.test(text.slice(numberEnd, end))) {
    const to = numberEnd + text.slice(numberEnd, end).search(/[^.,\d]|$/)
    const fixed = oneDecimalSign(text.slice(at, to))
    throw new ReadError(
      words.oneDecimalSign,
      at,
      to,
      fixed === undefined ? undefined : text.slice(0, at) + fixed + text.slice(to),
    )
  }
  if (fraction && toNumber(fraction[4] as string) === 0) throw new ReadError(words.dividedByZero, at, numberEnd)
  if (!Number.isFinite(value)) throw new ReadError(words.numberTooLarge, at, numberEnd)
  const unitStart = skipSpaces(text, numberEnd)
  const behind = text.slice(unitStart, end)
  const unitText = unitTextAt(behind)
  if (unitText === '') {
    if (/^\d/.test(behind)) {
      const joined = text.slice(at, end).replace(/(\d)\s+(?=\d)/g, '$1')
      throw new ReadError(words.spaceInNumber, at, end, text.slice(0, at) + joined + text.slice(end))
    }
    return { value, dimension: D.NONE, unit: undefined, to: numberEnd }
  }
  const bracketed = /^\[(.*)\]$/.exec(unitText)
  const shift = unitStart + (bracketed ? 1 : 0)
  try {
    const unit = readUnit(bracketed ? (bracketed[1] as string) : unitText)
    return { value, dimension: unit.dimension, unit, to: unitStart + unitText.length }
  } catch (error) {
    if (error instanceof UnitTextError)
      throw new ReadError(
        error.message,
        shift + error.from,
        shift + error.to,
        error.fix && text.slice(0, shift + error.from) + error.fix + text.slice(shift + error.to),
      )
    throw error
  }
}

/** Thousands run together where the signs say which is which: `1,234.5`, `1.234.567`; else no fix is sure. */
function oneDecimalSign(number: string): string | undefined {
  const thousands = /^[+-]?\d{1,3}(?:([.,])\d{3})(?:\1\d{3})*(?:[.,]\d*)?$/.exec(number)
  if (/^[+-]?\d+[.,]$/.test(number)) return number.slice(0, -1)
  return thousands ? number.replaceAll(thousands[1] as string, '') : undefined
}

/** The unit's text runs to the next number that is not a power, or to a sign that starts another term. */
function unitTextAt(rest: string): string {
  if (rest.startsWith('[')) return rest.slice(0, rest.indexOf(']') + 1 || rest.length)
  const match = /^(?:1\/)?(?:[^\d+\-±^]|\^\s*-?\d+)*/.exec(rest)
  return (match?.[0] ?? '').trimEnd()
}

function noNumber(text: string, at: number, end: number): ReadError {
  const rest = text.slice(at, end)
  const point = /^([+-]?)([.,])(\d+)/.exec(rest)
  if (point)
    return new ReadError(
      words.zeroMissing,
      at,
      at + point[0].length,
      text.slice(0, at) + rest.replace(/^([+-]?)[.,]/, '$10.') + text.slice(end),
    )
  return new ReadError(words.notANumber(clip(rest)), at, end)
}
