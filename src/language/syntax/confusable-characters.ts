import { sameSigns } from '../../units/index.ts'
import { type Diagnostic, type Fix, fix, problem } from '../values/diagnostic.ts'

/** A formula longer or deeper than this is refused before it is parsed: parsers below recurse. */
export const MAX_FORMULA_LENGTH = 2000
export const MAX_FORMULA_DEPTH = 100

/** One sign for each that Unicode holds twice; the length stays, so spans stay true: ℃ is left as it is. */
export const oneSign = (text: string): string =>
  text
    .split('℃')
    .map(sameSigns)
    .join('℃')
    .replace(/\u2212/g, '-')

/** Texts in quotes blanked out, so that nothing inside them is complained of. */
const withoutTexts = (text: string): string => text.replace(/"[^"\n]*"/g, (quoted) => '_'.repeat(quoted.length))

const refuseLength = (text: string): Diagnostic | undefined =>
  text.length > MAX_FORMULA_LENGTH
    ? problem(
        `A formula holds at most ${MAX_FORMULA_LENGTH} characters; this one has ${text.length}. Split it over several cells.`,
        MAX_FORMULA_LENGTH,
        text.length,
      )
    : undefined

function refuseDepth(text: string): Diagnostic | undefined {
  let depth = 0
  for (let i = 0; i < text.length; i++) {
    const c = text[i] as string
    if ('([{'.includes(c) && ++depth > MAX_FORMULA_DEPTH)
      return problem(
        `Brackets go at most ${MAX_FORMULA_DEPTH} deep. Split the formula over several cells.`,
        i,
        text.length,
      )
    if (')]}'.includes(c)) depth--
  }
  return undefined
}

interface Lookalike {
  readonly pattern: RegExp
  readonly say: (found: string) => string
  readonly fixes: (found: string, at: number) => readonly Fix[]
}

const swap =
  (insert: (found: string) => string) =>
  (found: string, at: number): Fix[] => [fix(insert(found), at, at + found.length)]

const codePoint = (sign: string): string =>
  `U+${(sign.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')}`

/** A comma between digits: of a decimal, of thousands, or of a list. */
function commaFixes(found: string, at: number): Fix[] {
  const to = at + found.length
  const apart = found.replaceAll(',', ', ')
  return [
    ...(/^\d+,\d+$/.test(found) ? [fix(found.replace(',', '.'), at, to)] : []),
    ...(/^[1-9]\d{0,2}(?:,\d{3})+$/.test(found) ? [fix(found.replaceAll(',', ''), at, to)] : []),
    fix(apart, at, to, `Write ${apart}, ${apart.split(', ').length} numbers`),
  ]
}

/** Signs that look like others, and habits from elsewhere, each with what is written here. */
const LOOKALIKES: readonly Lookalike[] = [
  {
    pattern: /[\u2012-\u2015]/g,
    say: () => 'A long dash is not a minus sign.',
    fixes: swap(() => '-'),
  },
  { pattern: /\+-|-\+/g, say: () => 'Limits of error are written with «±».', fixes: swap(() => '±') },
  {
    pattern: /(?<![\w.])\d+(?:,\d+)+/g,
    say: (found) =>
      `«${found}»: a decimal comma or a list? Numbers have a decimal point here; after a comma put a space.`,
    fixes: commaFixes,
  },
  {
    // Zero-width signs, marks of direction, and controls other than tabs and line ends.
    pattern: /(?!\s)[\p{Cc}\p{Cf}]|\ufeff/gu,
    say: (found) => `An invisible sign stands here (${codePoint(found)}).`,
    fixes: (found, at) => [fix('', at, at + found.length, 'Take it out')],
  },
  { pattern: /(?<=\d) ?['’]/g, say: () => 'Feet are written «ft».', fixes: swap(() => ' ft') },
  { pattern: /==/g, say: () => 'Equality is written with one «=».', fixes: swap(() => '=') },
  { pattern: /<>/g, say: () => '«Not equal» is written «!=» or «≠».', fixes: swap(() => '≠') },
  { pattern: /\*\*/g, say: () => 'A power is written with «^».', fixes: swap(() => '^') },
  { pattern: / *&&? */g, say: () => 'Conditions are joined with «and».', fixes: swap(() => ' and ') },
  { pattern: / *\|\|? */g, say: () => 'Conditions are joined with «or».', fixes: swap(() => ' or ') },
  {
    pattern: /(?<!\d ?)[“”„«»‘’'](?:[^“”„«»‘’'"\n]*[“”«»‘’'])?/g,
    say: () => 'Texts stand in straight double quotes.',
    fixes: swap((found) => (found.length > 1 ? `"${found.slice(1, -1)}"` : '"')),
  },
]

/** Some sign of one of the above; nearly no formula has any, and one search is quicker than a dozen. */
const ANY_LOOKALIKE = /[\u2012-\u2015]|\+-|-\+|\d,\d|==|<>|\*\*|[&|“”„«»‘’'\p{Cc}\p{Cf}]/u

/** What can be said of a formula before it is parsed. A diagnostic here means: do not parse. */
export function checkCharacters(text: string): Diagnostic[] {
  const long = refuseLength(text)
  if (long) return [long]
  if (text.trim() === '') return [problem('A formula is missing here.', 0, text.length)]
  const bare = withoutTexts(text)
  const deep = refuseDepth(bare)
  if (deep) return [deep]
  if (!ANY_LOOKALIKE.test(bare)) return []
  return LOOKALIKES.flatMap(({ pattern, say, fixes }) =>
    [...bare.matchAll(pattern)].map((match) =>
      problem(say(match[0]), match.index, match.index + match[0].length, fixes(match[0], match.index)),
    ),
  )
}
