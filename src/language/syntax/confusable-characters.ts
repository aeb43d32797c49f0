import { sameSigns } from '../../units/index.ts'
import { type Diagnostic, type Fix, fix, problem } from '../values/diagnostic.ts'
import { SYNTAX_WORDS as W } from './words.ts'

/** A formula longer or deeper than this is refused before it is parsed, since the parsers recurse. */
export const MAX_FORMULA_LENGTH = 2000
export const MAX_FORMULA_DEPTH = 100

/** A text in quotes, or a space of print, unless it is a thin or no-break one that groups digits by three. */
const TEXT_OR_SPACE =
  /"[^"\n]*"|[\u2000-\u2008\u200a\u205f\u3000]|(?<!\d)[\u00a0\u2009\u202f]|[\u00a0\u2009\u202f](?!\d{3}(?!\d))/g

/**
 * One sign for each that Unicode has twice, and one space: `1/125 s` is an exposure time whichever space it is typeset with.
 * The length stays the same, so spans stay true: ℃ is left as it is.
 */
export const oneSign = (text: string): string =>
  text
    .split('℃')
    .map(sameSigns)
    .join('℃')
    .replace(/\u2212/g, '-')
    .replace(TEXT_OR_SPACE, (found) => (found.length > 1 ? found : ' '))

/** The formula with its texts in quotes blanked out, so that nothing inside them is reported. */
const withoutTexts = (text: string): string => text.replace(/"[^"\n]*"/g, (quoted) => '_'.repeat(quoted.length))

const refuseLength = (text: string): Diagnostic | undefined =>
  text.length > MAX_FORMULA_LENGTH
    ? problem(W.tooLong(MAX_FORMULA_LENGTH, text.length), MAX_FORMULA_LENGTH, text.length)
    : undefined

function refuseDepth(text: string): Diagnostic | undefined {
  let depth = 0
  for (let i = 0; i < text.length; i++) {
    const c = text[i] as string
    if ('([{'.includes(c) && ++depth > MAX_FORMULA_DEPTH)
      return problem(W.bracketsTooDeep(MAX_FORMULA_DEPTH), i, text.length)
    if (')]}'.includes(c)) depth--
  }
  return undefined
}

/** A character or a short run of them that no formula has, and what to write for it. */
interface Confusable {
  readonly pattern: RegExp
  readonly say: (found: string) => string
  readonly fixes: (found: string, at: number, text: string) => readonly Fix[]
}

const swap =
  (insert: (found: string) => string) =>
  (found: string, at: number): Fix[] => [fix(insert(found), at, at + found.length)]

const codePoint = (sign: string): string =>
  `U+${(sign.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')}`

/** A comma between digits: of a decimal, of thousands, or of a list. */
function commaFixes(found: string, at: number, text: string): Fix[] {
  const to = at + found.length
  const apart = found.replaceAll(',', ', ')
  return [
    ...(/^\d+,\d+$/.test(found) ? [fix(found.replace(',', '.'), at, to)] : []),
    ...(/^[1-9]\d{0,2}(?:,\d{3})+$/.test(found) ? [fix(found.replaceAll(',', ''), at, to)] : []),
    // Outside of brackets there is no list that the comma could separate.
    ...(/[({][^)}]*$/.test(text.slice(0, at))
      ? [fix(apart, at, to, W.writeNumbers(apart, apart.split(', ').length))]
      : []),
  ]
}

/** With `;` between arguments, a comma between digits is a decimal comma. */
const semicolonFixes = (_found: string, _at: number, text: string): Fix[] => {
  const apart = text.replace(/;\s*$/, '').replace(/"[^"]*"|\d,(?=\d)|\s*;\s*/g, (part) => {
    if (part.startsWith('"')) return part
    return part.includes(';') ? ', ' : part.replace(',', '.')
  })
  return [fix(apart, 0, text.length)]
}

/** The operand after a root sign: what is in brackets, or one number or name with its unit or part. */
const ROOTED = /^\s*(?:(?=\()|(?<operand>\d+(?:\.\d+)?(?: ?[A-Za-zµ]+(?:\^\d|[²³])?)?|[A-Za-z_][\w.]*))/

const rootFixes =
  (name: string) =>
  (found: string, at: number, text: string): Fix[] => {
    const from = at + found.length
    const match = ROOTED.exec(text.slice(from))
    if (!match) return []
    const { operand } = match.groups as { operand?: string }
    return [fix(operand === undefined ? name : `${name}(${operand})`, at, from + match[0].length)]
  }

/** `2π` multiplies; `sin(π)` does not. */
const piFixes = (found: string, at: number, text: string): Fix[] => {
  const end = at + found.length
  const before = /(?<=[\w)\]]) *$/.exec(text.slice(0, at))
  const after = /^ *(?=[\w(])/.exec(text.slice(end))
  return [
    fix(
      `${before ? ' * ' : ''}pi${after ? ' * ' : ''}`,
      before ? before.index : at,
      after ? end + after[0].length : end,
    ),
  ]
}

/** ½ alone, or after a whole number: `1½ in` is `1.5 in`, `1⅓ stop` is a sum. */
function vulgarFixes(found: string, at: number): Fix[] {
  const whole = /^\d+/.exec(found)?.[0] ?? ''
  const part = found.slice(whole.length).trim().normalize('NFKC').replace('\u2044', '/')
  const [above, below] = part.split('/').map(Number) as [number, number]
  const exact = Number(whole || 0) + above / below
  const to = at + found.length
  if (Number(exact.toFixed(4)) === exact) return [fix(String(exact), at, to)]
  return [fix(whole ? `${whole} ${part}` : part, at, to)]
}

/** Every confusable, in the order in which they are reported. Where two match at one place, the first counts. */
const CONFUSABLES: readonly Confusable[] = [
  {
    pattern: /(?<![\w.])\d{1,3}(?:['’_]\d{3})+(?!\d)/g,
    say: W.apostropheInNumber,
    fixes: swap((found) => found.replace(/['’_]/g, '')),
  },
  { pattern: /(?<=\d) ?(?:''|’’|[”“])/g, say: () => W.inches, fixes: swap(() => ' in') },
  {
    pattern: /(?<=\d) ?['’]/g,
    say: () => W.feet,
    fixes: (found, at, text) => {
      const to = at + found.length
      return [fix(/\d/.test(text[to] ?? '') ? ' ft ' : ' ft', at, to)]
    },
  },
  {
    // Before the others, since what is between quotes is no part of the formula.
    pattern: /(?<!\d ?)[“”„«»‘’'](?:[^“”„«»‘’'"\n]*[“”«»‘’'])?/g,
    say: () => W.quotes,
    fixes: swap((found) => (found.length > 1 ? `"${found.slice(1, -1)}"` : '"')),
  },
  {
    pattern: /^\s*=+\s*(?=\S)/g,
    say: () => W.leadingEquals,
    fixes: (found, at) => [fix('', at, at + found.length, W.remove('='))],
  },
  { pattern: /;/g, say: () => W.semicolon, fixes: semicolonFixes },
  { pattern: /[\u2012-\u2015]/g, say: () => W.longDash, fixes: swap(() => '-') },
  { pattern: /\+-|-\+/g, say: () => W.plusMinus, fixes: swap(() => '±') },
  { pattern: /(?<![\w.])\d+(?:,\d+)+/g, say: W.commaInNumber, fixes: commaFixes },
  {
    // Zero-width signs, marks of direction, and controls other than tabs and line ends.
    pattern: /(?!\s)[\p{Cc}\p{Cf}]|\ufeff/gu,
    say: (found) => W.invisible(codePoint(found)),
    fixes: (found, at) => [fix('', at, at + found.length, W.removeIt)],
  },
  { pattern: /=</g, say: () => W.atMost, fixes: swap(() => '<=') },
  { pattern: /=>/g, say: () => W.atMost, fixes: swap(() => '>=') },
  { pattern: /==+/g, say: () => W.equality, fixes: swap(() => '=') },
  { pattern: /<>/g, say: () => W.notEqual, fixes: swap(() => '≠') },
  { pattern: /\*\*/g, say: () => W.power, fixes: swap(() => '^') },
  {
    pattern: /(?<![\w)\]|] *)\|(?!\|)[^|]+\|(?!\|)/g,
    say: () => W.absolute,
    fixes: swap((found) => `abs(${found.slice(1, -1)})`),
  },
  { pattern: / *&&? */g, say: () => W.and, fixes: swap(() => ' and ') },
  { pattern: / *\|\|? */g, say: () => W.or, fixes: swap(() => ' or ') },
  { pattern: /!(?!=) */g, say: () => W.not, fixes: swap(() => 'not ') },
  { pattern: /√/g, say: () => W.root('sqrt'), fixes: rootFixes('sqrt') },
  { pattern: /∛/g, say: () => W.root('cbrt'), fixes: rootFixes('cbrt') },
  { pattern: /π/g, say: () => W.pi, fixes: piFixes },
  { pattern: /(?<![\w.])(?:\d+ ?)?[¼-¾⅐-⅞]/g, say: W.vulgarFraction, fixes: vulgarFixes },
  { pattern: /[⁄∕]/g, say: (found) => W.otherSign(found, '/'), fixes: swap(() => '/') },
  { pattern: /[∗⋅∙•✕✖⨯]/g, say: (found) => W.otherSign(found, '*'), fixes: swap(() => '*') },
  { pattern: /[≦⩽]/g, say: (found) => W.otherSign(found, '<='), fixes: swap(() => '<=') },
  { pattern: /[≧⩾]/g, say: (found) => W.otherSign(found, '>='), fixes: swap(() => '>=') },
  { pattern: /ƒ/g, say: (found) => W.otherSign(found, 'f'), fixes: swap(() => 'f') },
  {
    // The wide forms of East Asian keyboards.
    pattern: /[\uff01-\uff5e]+/g,
    say: (found) => W.otherSign(found, found.normalize('NFKC')),
    fixes: swap((found) => found.normalize('NFKC')),
  },
]

/** Some sign of one of the above. Nearly no formula has any, and one search is quicker than two dozen. */
const ANY_CONFUSABLE =
  /^\s*=|[;√∛π¼-¾⅐-⅞⁄∕∗⋅∙•✕✖⨯≦⩽≧⩾ƒ\uff01-\uff5e\u2012-\u2015]|\+-|-\+|\d[,_]\d|==|=<|=>|<>|\*\*|!(?!=)|[&|“”„«»‘’'\p{Cc}\p{Cf}]/u

/** What can be said of a formula before it is parsed. Where anything is said, the formula is not checked further. */
export function checkCharacters(text: string): Diagnostic[] {
  const long = refuseLength(text)
  if (long) return [long]
  if (text.trim() === '') return [problem(W.empty, 0, text.length)]
  const bare = withoutTexts(text)
  const deep = refuseDepth(bare)
  if (deep) return [deep]
  if (!ANY_CONFUSABLE.test(bare)) return []
  const found: Diagnostic[] = []
  for (const { pattern, say, fixes } of CONFUSABLES)
    for (const { 0: match, index } of bare.matchAll(pattern)) {
      const to = index + match.length
      if (found.some((known) => known.from < to && index < known.to)) continue
      found.push(problem(say(match), index, to, fixes(match, index, text)))
    }
  return found
}
