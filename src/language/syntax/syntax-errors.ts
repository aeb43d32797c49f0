import type { SyntaxNode, Tree } from '@lezer/common'
import { clip } from '../../units/index.ts'
import { type Diagnostic, fix, problem } from '../values/diagnostic.ts'
import { habitAt, type KnownNames } from './habits.ts'
import { SYNTAX_WORDS as W } from './words.ts'

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

/** Explains from the text around it why the parser stopped, with what to write instead. */
export function explainSyntaxError(text: string, tree: Tree, known: KnownNames): Diagnostic {
  const at = firstError(tree)?.from ?? text.length
  const open = text.slice(at).trim() === '' ? bracketError(text) : undefined
  if (open) return open
  const habit = habitAt(text, at, known)
  if (habit) return problem(habit.message, habit.from, habit.to, habit.fixes)
  return bracketError(text) ?? unfinished(text, at)
}

const CLOSING: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}' }
const OPENING: Readonly<Record<string, string>> = { ')': '(', ']': '[', '}': '{' }

/** Brackets and quotes that do not pair. Everything left open at the end is closed at once. */
function bracketError(text: string): Diagnostic | undefined {
  const open: { sign: string; at: number }[] = []
  for (let i = 0; i < text.length; i++) {
    const c = text[i] as string
    if (c === '"') {
      const end = text.indexOf('"', i + 1)
      if (end < 0)
        return problem(W.unclosedText, i, text.length, [fix('"', text.length, text.length, W.closeWith('"'))])
      i = end
    } else if (CLOSING[c]) open.push({ sign: c, at: i })
    else if (OPENING[c]) {
      const last = open.pop()
      if (!last)
        return problem(W.closesNothing(c, OPENING[c]), i, i + 1, [
          fix('', i, i + 1, W.removeIt),
          fix(OPENING[c], 0, 0, W.openWith(OPENING[c])),
        ])
      const closing = CLOSING[last.sign] as string
      if (closing !== c)
        return problem(W.wrongClosing(last.sign, closing, c), last.at, i + 1, [
          fix(closing, i, i + 1),
          fix(closing, i, i, W.closeFirst(closing)),
        ])
    }
  }
  const last = open.at(-1)
  if (!last) return undefined
  const end = text.trimEnd().length
  const closings = open
    .reverse()
    .map(({ sign }) => CLOSING[sign] as string)
    .join('')
  return problem(W.unclosed(last.sign, CLOSING[last.sign] as string), last.at, last.at + 1, [
    fix(closings, end, text.length, W.closeWith(closings)),
  ])
}

function unfinished(text: string, at: number): Diagnostic {
  const rest = text.slice(at).trim()
  if (rest === '') {
    const sign = /[-+*/×·÷^=<>≤≥≠:,±.(]\s*$|\b(?:and|or|not)\s*$/.exec(text)
    return problem(sign ? W.missingAfter(sign[0].trim()) : W.unfinished, sign ? sign.index : text.length, text.length)
  }
  const start = at + (text.slice(at).length - text.slice(at).trimStart().length)
  const [word] = /^(?:[\w.]+|.)/u.exec(rest) as RegExpExecArray
  return problem(W.doesNotFit(clip(word)), start, start + word.length)
}
