import { findUnit } from '../../units/index.ts'
import { type Fix, fix } from '../values/diagnostic.ts'
import { RESERVED } from '../values/scope.ts'
import { SYNTAX_WORDS as W } from './words.ts'

const NUMBER = String.raw`\d+(?:\.\d+)?`
const UNIT = String.raw`(?!(?:and|or|not)\b)[A-Za-zµΩ°′″%‰][A-Za-zµΩ]*`
const WORD = String.raw`[A-Za-z_]\w*`
/** A number, a name or something in brackets, not nested. */
const OPERAND = String.raw`(?:[\w.]+(?: ?${UNIT})?|\([^()]*\))`

/** What a formula may name, as far as reading its text needs to know. */
export interface KnownNames {
  isFunction(name: string): boolean
  isCell(name: string): boolean
}

type Groups = Record<string, string>

/** A way of writing from elsewhere that the language does not read. */
interface Habit {
  /** Matches the text around the place where the parser stopped. */
  readonly pattern: RegExp
  /** Whether a match is this habit, where the pattern alone does not decide. */
  readonly applies?: (groups: Groups, known: KnownNames) => boolean
  readonly say: (groups: Groups) => string
  /** What to write in place of the match, the likeliest first. */
  readonly write: (groups: Groups) => string | readonly string[]
}

const habit = (
  pattern: string | RegExp,
  say: (groups: Groups) => string,
  write: Habit['write'],
  applies?: Habit['applies'],
): Habit => ({ pattern: new RegExp(pattern, 'g'), say, write, ...(applies ? { applies } : {}) })

const g = (groups: Groups, name: string): string => groups[name] ?? ''
const isUnit = (word: string): boolean => findUnit(word) !== undefined
const JOINING = /^(?:and|or|not|yes|no)$/

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹'
const lowered = (power: string): string => [...power].map((c) => (c === '⁻' ? '-' : SUPERSCRIPTS.indexOf(c))).join('')

const MONTHS = /^(?:0?[1-9]|1[0-2])$/
const day = (text: string): boolean => Number(text) >= 1 && Number(text) <= 31
const iso = (year: string, month: string, date: string): string =>
  `"${year}-${month.padStart(2, '0')}-${date.padStart(2, '0')}"`

/** The dates that figures with the year at the end may be: day first, and month first where both can be. */
export function datesOf(first: string, second: string, year: string): string[] {
  const dates: string[] = []
  if (MONTHS.test(second) && day(first)) dates.push(iso(year, second, first))
  if (MONTHS.test(first) && day(second) && first !== second) dates.push(iso(year, first, second))
  return dates
}

/** Tried in this order where the parser stopped. */
const HABITS: readonly Habit[] = [
  // a = b ? c : d, if a then b else c
  habit(
    String.raw`^\s*(?<condition>[^?]+?)\s*\?\s*(?<then>[^?:]+?)\s*:\s*(?<otherwise>[^?:]+?)\s*$`,
    () => W.conditional,
    ({ condition, then, otherwise }) => `when(${condition}, ${then}, ${otherwise})`,
  ),
  habit(
    String.raw`^\s*if\s+(?<condition>.+?)\s+then\s+(?<then>.+?)\s+else\s+(?<otherwise>.+?)\s*$`,
    () => W.conditional,
    ({ condition, then, otherwise }) => `when(${condition}, ${then}, ${otherwise})`,
  ),
  // scale := 2 mm, scale: 2 mm
  habit(
    String.raw`^\s*(?<name>${WORD})\s*:=?\s*(?<rest>.+)$`,
    (groups) => W.assignment(g(groups, 'name')),
    (groups) => g(groups, 'rest'),
  ),
  // 2 + 3 =
  habit(
    String.raw`\s*=\s*$`,
    () => W.trailingEquals,
    () => '',
  ),
  // 01.03.2026
  habit(
    String.raw`(?<![\w.])(?<a>\d{1,2})\.(?<b>\d{1,2})\.(?<year>\d{4})(?![\w.])`,
    () => W.dateAsText,
    (groups) => datesOf(g(groups, 'a'), g(groups, 'b'), g(groups, 'year')),
  ),
  // ISO 100
  habit(
    String.raw`\b(?:ISO|ASA|iso|asa)\s*(?<number>\d+)\b`,
    (groups) => W.speed(g(groups, 'number')),
    (groups) => g(groups, 'number'),
  ),
  // f5.6, f 8
  habit(
    String.raw`\b[fF]\s*(?<number>${NUMBER})(?![\w.])`,
    (groups) => W.fNumber(`f/${g(groups, 'number')}`),
    (groups) => `f/${g(groups, 'number')}`,
  ),
  // [1, 2, 3]
  habit(
    String.raw`\[(?<items>[^[\]]*,[^[\]]*)\]`,
    () => W.listInBraces,
    (groups) => `{${g(groups, 'items')}}`,
  ),
  // 53.4 x 40 mm, 420 by 297 mm are sizes; 2 x 3 multiplies
  habit(
    String.raw`(?<a>${NUMBER})(?: *(?<first>${UNIT}))? *(?:[xX×]|\bby\b) *(?<b>${NUMBER}) *(?<unit>${UNIT})`,
    (groups) => sizeSaid(groups),
    (groups) => sizeWritten(groups),
    (groups) => isUnit(g(groups, 'unit')),
  ),
  habit(
    String.raw`(?<a>[\d.]+(?: ?${UNIT})?|\)) *[xX] *(?<b>[\d.]+|\()`,
    () => W.otherSign('x', '*'),
    ({ a, b }) => `${a} * ${b}`,
  ),
  // lens to original(…), original width
  habit(
    String.raw`(?<![\w.])(?<words>[A-Za-z]\w*(?: +[A-Za-z]\w*){1,5})(?![\w.])`,
    (groups) => W.spacedName(g(groups, 'words').replace(/ +/g, '_')),
    (groups) => g(groups, 'words').replace(/ +/g, '_'),
    (groups, known) => {
      const joined = g(groups, 'words').replace(/ +/g, '_')
      return known.isFunction(joined) || known.isCell(joined)
    },
  ),
  // 1 1/3 stop, 1 1/2
  habit(
    String.raw`(?<whole>\d+) +(?<part>\d+/\d+) *(?<unit>${UNIT}|\[[^\]]*\])`,
    (groups) => W.mixedNumber(`${g(groups, 'whole')} ${g(groups, 'part')}`),
    ({ whole, part, unit }) => `${whole} ${unit} + ${part} ${unit}`,
  ),
  habit(
    String.raw`(?<![\w.])(?<whole>\d+) +(?<part>\d+/\d+)(?![\w.])`,
    (groups) => W.mixedNumber(`${g(groups, 'whole')} ${g(groups, 'part')}`),
    ({ whole, part }) => `(${whole} + ${part})`,
  ),
  // 5 ft 3", 12"
  habit(
    `(?<a>${NUMBER}) *(?<unit>${UNIT}) *(?<b>${NUMBER}) ?["”]`,
    () => W.inches,
    ({ a, unit, b }) => `${a} ${unit} + ${b} in`,
  ),
  habit(
    `(?<a>${NUMBER}) ?["”]`,
    () => W.inches,
    ({ a }) => `${a} in`,
  ),
  // 5 ft 3 in, 1°30′
  habit(
    `(?<a>${NUMBER}) *(?<unit>${UNIT}) *(?<b>${NUMBER}) *(?<second>${UNIT})`,
    (groups) => W.missingPlus(g(groups, 'unit'), `${g(groups, 'b')} ${g(groups, 'second')}`),
    ({ a, unit, b, second }) => `${a} ${unit} + ${b} ${second}`,
  ),
  // x², 3²
  habit(
    String.raw`(?<a>${WORD}|${NUMBER}|\)) *(?<power>⁻?[${SUPERSCRIPTS}]+)`,
    (groups) => W.raisedFigure(lowered(g(groups, 'power'))),
    (groups) => `${g(groups, 'a')}^${lowered(g(groups, 'power'))}`,
  ),
  // (2^3) mm
  habit(
    String.raw`\) *(?<unit>${UNIT}|\[[^\]]*\])`,
    (groups) => W.unitAfterBracket(g(groups, 'unit')),
    ({ unit }) => `) * 1 ${unit}`,
    (groups, known) =>
      g(groups, 'unit').startsWith('[') || (isUnit(g(groups, 'unit')) && !known.isCell(g(groups, 'unit'))),
  ),
  // 2 sin(x): the word after a number is read as a unit
  habit(
    String.raw`(?<a>${NUMBER}) *(?<word>${WORD}) *\(`,
    (groups) => W.wordIsUnit(g(groups, 'a'), g(groups, 'word')),
    ({ a, word }) => `${a} * ${word}(`,
    (groups, known) => known.isFunction(g(groups, 'word')) || known.isCell(g(groups, 'word')) || groups.word === 'when',
  ),
  // 2 lx h
  habit(
    String.raw`(?<a>${NUMBER}) *(?<unit>${UNIT}) +(?<second>${UNIT})(?![\w(])`,
    (groups) =>
      isUnit(g(groups, 'second'))
        ? W.compoundUnit(`${g(groups, 'unit')} ${g(groups, 'second')}`)
        : W.missingSign(g(groups, 'unit'), g(groups, 'second')),
    ({ a, unit, second }) => (isUnit(second as string) ? `${a} [${unit} ${second}]` : `${a} ${unit} * ${second}`),
  ),
  // 1 200 mm
  habit(
    String.raw`(?<![\w.])(?<a>\d{1,3}(?: \d{3})+(?:\.\d+)?)(?![\d.])`,
    (groups) => W.spaceInNumber(g(groups, 'a')),
    (groups) => g(groups, 'a').replaceAll(' ', ''),
  ),
  habit(
    String.raw`(?<a>\d+)\.(?!\d)`,
    (groups) => W.digitsMissing(g(groups, 'a')),
    ({ a }) => `${a}.0`,
  ),
  // 2(a + b), (a)(b), x(…) where x is no function
  habit(
    String.raw`(?<left>${WORD}|[\d)\]}]) *\(`,
    () => W.missingTimes('('),
    ({ left }) => `${left} * (`,
    (groups, known) => !known.isFunction(g(groups, 'left')) && !RESERVED.has(g(groups, 'left')),
  ),
  // (a) b, (a) 2
  habit(
    String.raw`(?<left>[)\]}]) *(?<right>[A-Za-z_\d][\w.]*)`,
    (groups) => W.missingTimes(g(groups, 'right')),
    ({ left, right }) => `${left} * ${right}`,
    (groups) => !JOINING.test(g(groups, 'right')),
  ),
  // width mm: the cell has its unit
  habit(
    String.raw`(?<name>${WORD}) +(?<unit>${UNIT})(?![\w(])`,
    (groups) => W.unitOfCell(g(groups, 'name'), g(groups, 'unit')),
    (groups) => g(groups, 'name'),
    (groups, known) => known.isCell(g(groups, 'name')) && isUnit(g(groups, 'unit')) && !known.isCell(g(groups, 'unit')),
  ),
  // sqrt x, sin 30 deg
  habit(
    `(?<name>${WORD}) +(?<argument>${OPERAND})`,
    (groups) => W.argumentsInBrackets(g(groups, 'name')),
    ({ name, argument }) => `${name}(${argument})`,
    (groups, known) => known.isFunction(g(groups, 'name')) && !JOINING.test(g(groups, 'argument')),
  ),
  // width height
  habit(
    `(?<left>${WORD}) +(?<right>${WORD}|${NUMBER}(?: *${UNIT})?)`,
    (groups) => W.missingSign(g(groups, 'left'), g(groups, 'right')),
    ({ left, right }) => `${left} * ${right}`,
    (groups) => !JOINING.test(g(groups, 'left')) && !JOINING.test(g(groups, 'right')),
  ),
]

function sizeSaid(groups: Groups): string {
  return W.size(...sidesOf(groups))
}

function sizeWritten(groups: Groups): string[] {
  const [width, height] = sidesOf(groups)
  return [`size(${width}, ${height})`, `${width} * ${height}`]
}

/** Width and height with their units; the first side takes the unit of the second. */
function sidesOf(groups: Groups): [string, string] {
  const unit = g(groups, 'unit')
  return [`${g(groups, 'a')} ${groups.first ?? unit}`, `${g(groups, 'b')} ${unit}`]
}

/** A habit met at the place where the parser stopped. */
export interface HabitMet {
  readonly message: string
  readonly from: number
  readonly to: number
  readonly fixes: readonly Fix[]
}

/** The first habit that explains why the parser stopped at this place. */
export function habitAt(text: string, at: number, known: KnownNames): HabitMet | undefined {
  for (const { pattern, applies, say, write } of HABITS)
    for (const match of text.matchAll(pattern)) {
      const from = match.index
      const to = from + match[0].length
      const groups = match.groups ?? {}
      if (at < from || at > to + 1 || (applies && !applies(groups, known))) continue
      const written = write(groups)
      const texts = typeof written === 'string' ? [written] : written
      return { message: say(groups), from, to, fixes: texts.map((one) => fix(one, from, to)) }
    }
  return undefined
}
