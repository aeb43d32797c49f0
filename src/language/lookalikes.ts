import { sameSigns } from '../units/index.ts'
import type { Diagnostic, Mend } from './diagnostic.ts'

/** A formula longer or deeper than this is refused before it is parsed: parsers below recurse. */
export const LONGEST_FORMULA = 2000
export const DEEPEST_FORMULA = 100

export const problem = (
  message: string,
  from: number,
  to: number,
  more: { found?: string; wanted?: string; mends?: readonly Mend[] } = {},
): Diagnostic => ({ severity: 'error', message, from, to, mends: [], ...more })

export const doubt = (message: string, from: number, to: number, mends: readonly Mend[] = []): Diagnostic => ({
  severity: 'warning',
  message,
  from,
  to,
  mends,
})

export const mend = (insert: string, from: number, to: number, label = `Write ${insert.trim()}`): Mend => ({
  label,
  from,
  to,
  insert,
})

/** One sign for each that Unicode holds twice; the length stays, so spans stay true. */
export const oneSign = (text: string): string => sameSigns(text).replace(/\u2212/g, '-')

/** Texts in quotes blanked out, so that nothing inside them is complained of. */
const withoutTexts = (text: string): string => text.replace(/"[^"\n]*"/g, (quoted) => '_'.repeat(quoted.length))

function refuseSize(text: string): Diagnostic | undefined {
  if (text.length > LONGEST_FORMULA)
    return problem(
      `A formula holds at most ${LONGEST_FORMULA} characters; this one has ${text.length}. Split it over several cells.`,
      LONGEST_FORMULA,
      text.length,
    )
  let depth = 0
  for (let i = 0; i < text.length; i++) {
    const c = text[i] as string
    if ('([{'.includes(c) && ++depth > DEEPEST_FORMULA)
      return problem(
        `Brackets go at most ${DEEPEST_FORMULA} deep. Split the formula over several cells.`,
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
  readonly mends: (found: string, at: number) => readonly Mend[]
}

const swap =
  (insert: (found: string) => string) =>
  (found: string, at: number): Mend[] => [mend(insert(found), at, at + found.length)]

/** Signs that look like others, and habits from elsewhere, each with what is written here. */
const LOOKALIKES: readonly Lookalike[] = [
  {
    pattern: /[\u2012-\u2015]/g,
    say: () => 'A long dash is not a minus sign.',
    mends: swap(() => '-'),
  },
  { pattern: /\+-|-\+/g, say: () => 'Limits of error are written with «±».', mends: swap(() => '±') },
  {
    pattern: /(?<![\w.])\d+,\d+/g,
    say: (found) =>
      `«${found}»: a decimal comma or a list? Numbers have a decimal point here; after a comma put a space.`,
    mends: (found, at) => [
      mend(found.replace(',', '.'), at, at + found.length),
      mend(found.replace(',', ', '), at, at + found.length, `Write ${found.replace(',', ', ')}, two numbers`),
    ],
  },
  { pattern: /==/g, say: () => 'Equality is written with one «=».', mends: swap(() => '=') },
  { pattern: /<>/g, say: () => '«Not equal» is written «!=» or «≠».', mends: swap(() => '≠') },
  { pattern: /\*\*/g, say: () => 'A power is written with «^».', mends: swap(() => '^') },
  { pattern: /&&?/g, say: () => 'Conditions are joined with «and».', mends: swap(() => ' and ') },
  { pattern: /\|\|?/g, say: () => 'Conditions are joined with «or».', mends: swap(() => ' or ') },
  { pattern: /[“”„«»']/g, say: () => 'Texts stand in straight double quotes.', mends: swap(() => '"') },
]

/** What can be said of a formula before it is parsed. A diagnostic here means: do not parse. */
export function lookOver(text: string): Diagnostic[] {
  const size = refuseSize(text)
  if (size) return [size]
  if (text.trim() === '') return [problem('A formula is missing here.', 0, text.length)]
  const bare = withoutTexts(text)
  return LOOKALIKES.flatMap(({ pattern, say, mends }) =>
    [...bare.matchAll(pattern)].map((match) =>
      problem(say(match[0]), match.index, match.index + match[0].length, {
        found: match[0],
        mends: mends(match[0], match.index),
      }),
    ),
  )
}
