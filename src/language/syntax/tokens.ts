import { ExternalTokenizer, type InputStream } from '@lezer/lr'
import { FNumber, Fraction, Unit } from './parser.terms.ts'

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹'
const SIGNS = '°′″%‰℃'

/** A character of the text; beyond its end one that is in no word, number or unit. */
const char = (code: number): string => String.fromCharCode(code)
const isDigit = (code: number): boolean => code >= 48 && code <= 57
const isSpace = (c: string): boolean => c === ' ' || c === '\t' || c === '\n'
const isLetter = (c: string): boolean => /[A-Za-zµμΩΩK℃]/.test(c)
const isWordPart = (c: string): boolean => /[A-Za-z0-9_µμΩΩ]/.test(c)

/** Offset after a plain decimal number that starts at `at`, or `at` where there is none. */
function afterNumber(input: InputStream, at: number): number {
  let i = at
  while (isDigit(input.peek(i))) i++
  if (i === at) return at
  if (char(input.peek(i)) === '.' && isDigit(input.peek(i + 1))) {
    i++
    while (isDigit(input.peek(i))) i++
  }
  return i
}

function wordAt(input: InputStream, at: number): string {
  let word = ''
  while (isWordPart(char(input.peek(at + word.length)))) word += char(input.peek(at + word.length))
  return word
}

const isJoiner = (word: string): boolean => word === 'and' || word === 'or'

/** Offset after a unit with its whole power, or `at` where no unit starts there. */
function afterUnit(input: InputStream, at: number): number {
  const first = char(input.peek(at))
  let i = at
  if (SIGNS.includes(first)) {
    i++
    if (first === '°' && /[CF]/.test(char(input.peek(i))) && !isWordPart(char(input.peek(i + 1)))) i++
  } else if (isLetter(first)) {
    const word = wordAt(input, at)
    if (isJoiner(word)) return at
    i += word.length
  } else return at
  return afterUnitPower(input, i)
}

function afterUnitPower(input: InputStream, at: number): number {
  let i = at
  if (char(input.peek(i)) === '^') {
    let power = i + 1
    if (char(input.peek(power)) === '-' || char(input.peek(power)) === '−') power++
    if (!isDigit(input.peek(power))) return at
    while (isDigit(input.peek(power))) power++
    return power
  }
  if (char(input.peek(i)) === '⁻') i++
  const start = i
  while (SUPERSCRIPTS.includes(char(input.peek(i)))) i++
  return i === start ? at : i
}

function take(input: InputStream, length: number, term: number): void {
  input.advance(length)
  input.acceptToken(term)
}

/** A unit comes only after a number; a fraction is one number only before a unit; `f/8` is an f-number. */
export const trade = new ExternalTokenizer(
  (input, stack) => {
    if (stack.canShift(Unit)) {
      const unit = afterUnit(input, 0)
      if (unit > 0) take(input, unit, Unit)
      return
    }
    if (char(input.next) === 'f' && char(input.peek(1)) === '/' && stack.canShift(FNumber)) {
      const end = afterNumber(input, 2)
      if (end > 2) take(input, end, FNumber)
      return
    }
    if (!isDigit(input.next) || !stack.canShift(Fraction)) return
    const slash = afterNumber(input, 0)
    if (char(input.peek(slash)) !== '/') return
    const end = afterNumber(input, slash + 1)
    if (end === slash + 1) return
    let unit = end
    while (isSpace(char(input.peek(unit)))) unit++
    if (char(input.peek(unit)) === '[' || afterUnit(input, unit) > unit) take(input, end, Fraction)
  },
  { contextual: true },
)
