import type { SyntaxNode, Tree } from '@lezer/common'
import { clip, findUnit } from '../../units/index.ts'
import { type Diagnostic, fix, problem } from '../values/diagnostic.ts'

const NUMBER = String.raw`\d+(?:\.\d+)?`
const UNIT = `[A-Za-zµΩ°′″%‰][A-Za-zµΩ]*`

/** Where the first thing that does not fit starts. */
function firstError(tree: Tree): SyntaxNode | undefined {
  let found: SyntaxNode | undefined
  tree.iterate({
    enter(node) {
      if (found) return false
      if (node.type.isError) found = node.node
      return undefined
    },
  })
  return found
}

const lowered = (power: string): string => [...power].map((c) => '⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(c)).join('')

interface Habit {
  /** Must match the text around the error: the group `here` holds what is complained of. */
  readonly pattern: RegExp
  readonly say: (groups: Record<string, string>) => string
  readonly write: (groups: Record<string, string>) => string
}

/** Things people write that are not the language's, tried where the parser stumbled. */
const HABITS: readonly Habit[] = [
  {
    // 1 1/3 stop
    pattern: new RegExp(String.raw`(?<whole>\d+) +(?<part>\d+/\d+) *(?<unit>${UNIT}|\[[^\]]*\])`, 'd'),
    say: ({ whole, part }) => `«${whole} ${part}» is not one number here.`,
    write: ({ whole, part, unit }) => `${whole} ${unit} + ${part} ${unit}`,
  },
  {
    // 5 ft 3 in, 1°30′
    pattern: new RegExp(`(?<a>${NUMBER}) *(?<unit>${UNIT}) *(?<b>${NUMBER}) *(?<second>${UNIT})`, 'd'),
    say: ({ unit, b, second }) => `Between «${unit}» and «${b} ${second}» a sign is missing; a sum needs its «+».`,
    write: ({ a, unit, b, second }) => `${a} ${unit} + ${b} ${second}`,
  },
  {
    // 12": inches as they are often typed
    pattern: new RegExp(`(?<a>${NUMBER}) ?["”]`, 'd'),
    say: () => 'Inches are written «in».',
    write: ({ a }) => `${a} in`,
  },
  {
    // x²: raised figures stand only behind a unit
    pattern: /(?<a>[A-Za-z_]\w*|\)) *(?<power>[⁰¹²³⁴⁵⁶⁷⁸⁹]+)/d,
    say: ({ power }) =>
      `A raised figure stands only after a unit; here a power is written «^${lowered(power as string)}».`,
    write: ({ a, power }) => `${a}^${lowered(power as string)}`,
  },
  {
    // (2^3) mm
    pattern: new RegExp(String.raw`\) *(?<unit>${UNIT}|\[[^\]]*\])`, 'd'),
    say: ({ unit }) => `A unit stands only after a number; here multiply by 1 ${unit}.`,
    write: ({ unit }) => `) * 1 ${unit}`,
  },
  {
    // 2 sin(x): the word after a number is read as a unit
    pattern: new RegExp(String.raw`(?<a>${NUMBER}) *(?<word>[A-Za-z_]\w*) *\(`, 'd'),
    say: ({ a, word }) => `After the number ${a} the word «${word}» is read as a unit; to multiply, write «*».`,
    write: ({ a, word }) => `${a} * ${word}(`,
  },
  {
    // 2 lx h
    pattern: new RegExp(String.raw`(?<a>${NUMBER}) *(?<unit>${UNIT}) +(?<second>${UNIT})(?![\w(])`, 'd'),
    say: ({ unit, second }) =>
      findUnit(second as string)
        ? `A unit of more than one part stands in brackets: [${unit} ${second}].`
        : `Between «${unit}» and «${second}» a sign is missing.`,
    write: ({ a, unit, second }) =>
      findUnit(second as string) ? `${a} [${unit} ${second}]` : `${a} ${unit} * ${second}`,
  },
  {
    // 1 200 mm
    pattern: /(?<a>\d{1,3}(?: \d{3})+(?:\.\d+)?)(?![\d.])/d,
    say: ({ a }) => `A space inside the number «${a}»: write it together.`,
    write: ({ a }) => (a as string).replaceAll(' ', ''),
  },
  {
    pattern: /(?<a>\d+)\.(?!\d)/d,
    say: ({ a }) => `After the decimal point of «${a}.» digits are missing.`,
    write: ({ a }) => `${a}.0`,
  },
  {
    pattern: /(?<left>[\w)\]}]) *\((?<right>)/d,
    say: () => 'Two brackets side by side: a sign such as «*» is missing between them.',
    write: ({ left }) => `${left} * (`,
  },
]

/** `sin x`, `width height`: two words with nothing between. */
function wordsSideBySide(text: string, at: number, isFunction: (name: string) => boolean): Diagnostic | undefined {
  const [before, left] = /(\w+) +$/.exec(text.slice(0, at)) ?? []
  const right = new RegExp(`^(?:[A-Za-z_]\\w*|${NUMBER}(?: *${UNIT})?)`).exec(text.slice(at))?.[0]
  if (!before || !left || !right || !/^[A-Za-z_]/.test(left)) return undefined
  const from = at - before.length
  const to = at + right.length
  if (isFunction(left))
    return problem(`The arguments of «${left}» stand in parentheses.`, from, to, [fix(`${left}(${right})`, from, to)])
  if (/^(?:and|or|not|yes|no)$/.test(left) || /^(?:and|or|not|yes|no)$/.test(right)) return undefined
  return problem(`Between «${left}» and «${clip(right)}» a sign is missing.`, from, to, [
    fix(`${left} * ${right}`, from, to),
  ])
}

/** Reads what went wrong from the text around the place where the parser stumbled. */
export function explainSyntaxError(text: string, tree: Tree, isFunction: (name: string) => boolean): Diagnostic {
  const error = firstError(tree)
  const at = error?.from ?? text.length
  const open = text.slice(at).trim() === '' ? unclosed(text) : undefined
  if (open) return open
  for (const { pattern, say, write } of HABITS)
    for (const match of text.matchAll(new RegExp(pattern.source, 'dg'))) {
      const end = match.index + match[0].length
      if (at < match.index || at > end + 1) continue
      const groups = match.groups as Record<string, string>
      return problem(say(groups), match.index, end, [fix(write(groups), match.index, end)])
    }
  return unclosed(text) ?? wordsSideBySide(text, at, isFunction) ?? unfinished(text, at)
}

const CLOSING: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}' }

function unclosed(text: string): Diagnostic | undefined {
  const open: { sign: string; at: number }[] = []
  for (let i = 0; i < text.length; i++) {
    const c = text[i] as string
    if (c === '"') {
      const end = text.indexOf('"', i + 1)
      if (end < 0)
        return problem('This text is never closed with «"».', i, text.length, [
          fix('"', text.length, text.length, 'Close it'),
        ])
      i = end
    } else if (CLOSING[c]) open.push({ sign: c, at: i })
    else if (')]}'.includes(c)) {
      const last = open.pop()
      if (!last) return problem(`«${c}» closes nothing.`, i, i + 1, [fix('', i, i + 1, 'Take it out')])
      if (CLOSING[last.sign] !== c)
        return problem(`«${last.sign}» is closed by «${c}»; wanted «${CLOSING[last.sign]}».`, i, i + 1, [
          fix(CLOSING[last.sign] as string, i, i + 1),
        ])
    }
  }
  const last = open.at(-1)
  return last
    ? problem(`«${last.sign}» is never closed.`, last.at, last.at + 1, [
        fix(CLOSING[last.sign] as string, text.length, text.length, `Close with ${CLOSING[last.sign]}`),
      ])
    : undefined
}

function unfinished(text: string, at: number): Diagnostic {
  const rest = text.slice(at).trim()
  if (rest === '') {
    const sign = /[-+*/^=<>≤≥≠:,±.(]\s*$|\b(?:and|or|not)\s*$/.exec(text)
    return problem(
      sign ? `After «${sign[0].trim()}» something is missing.` : 'The formula is not finished.',
      sign ? sign.index : text.length,
      text.length,
    )
  }
  const start = at + (text.slice(at).length - text.slice(at).trimStart().length)
  const word = /^(?:[\w.]+|.)/u.exec(rest)?.[0] ?? rest
  return problem(`«${clip(word)}» does not fit here.`, start, start + word.length)
}
