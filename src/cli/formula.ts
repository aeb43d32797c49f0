import { LIBRARY } from '../functions/index.ts'
import { type Diagnostic, problem, RESERVED } from '../language/index.ts'
import { SYNTAX_WORDS } from '../language/syntax/words.ts'
import { nearestMark } from '../units/words.ts'
import { type Cell, FORMAT, NAME_PATTERN, type Outcome, Sheet, VERSION } from '../worksheet/index.ts'
import { type Arguments, readText } from './input.ts'
import { InputError } from './input-error.ts'
import { printErrorLines, printJson, printLines, reportOf, wholeFixes } from './report.ts'
import * as words from './words.ts'

const RESULT = 'formula'

/** `formula 'TEXT'`: one formula, its names set by `--set`. */
export function formula({ subject: given, sets, json }: Arguments): number {
  const subject = given.trim() === '-' ? readText('-').trim() : given
  const cells: Cell[] = sets.map(({ name, text }) => setCell(name, text))
  const sheet = new Sheet(
    {
      format: FORMAT,
      version: VERSION,
      title: '',
      cells: [...cells, { kind: 'result', id: RESULT, name: freeResultName(sets), formula: subject }],
    },
    LIBRARY,
  )
  for (const cell of cells) refuseUnreadable(cell, sheet.outcome(cell.id))
  const outcome = refusedIfEmpty(sheet.outcome(RESULT))
  if (json) printJson(reportOf(outcome, subject))
  else if (outcome.state === 'value') printLines(plainLines(outcome, subject))
  else printErrorLines(plainLines(outcome, subject))
  return outcome.state === 'value' ? 0 : 1
}

/** In a sheet an empty formula waits to be written; here there is nothing to wait for. */
const refusedIfEmpty = (outcome: Outcome): Outcome =>
  outcome.state === 'waiting' ? { state: 'error', diagnostics: [problem(SYNTAX_WORDS.empty, 0, 0)] } : outcome

/** The formula's own cell must not be found by the formula. */
const freeResultName = (sets: Arguments['sets']): string => {
  let name = 'the_formula_itself'
  while (sets.some((set) => set.name === name)) name += '_'
  return name
}

/** A value as it would be typed: a quantity, a size, yes or no, a list, or a text in quotes. */
function setCell(name: string, text: string): Cell {
  if (!NAME_PATTERN.test(name) || RESERVED.has(name)) throw new InputError(words.setName(name))
  const typed = text.trim()
  if (/^[{"]/.test(typed)) return { kind: 'result', id: `set ${name}`, name, formula: typed }
  const entry = /^(yes|no)$/i.test(typed)
    ? 'yes or no'
    : /\d\s*[a-zµ′″]*\s*([x×]|\bby\b)\s*\d/i.test(typed)
      ? 'size'
      : 'quantity'
  return { kind: 'given', id: `set ${name}`, name, entry, value: text }
}

function refuseUnreadable(cell: Cell, outcome: Outcome): void {
  if (outcome.state === 'value') return
  const name = cell.id.replace(/^set /, '')
  const why = outcome.state === 'error' ? outcome.diagnostics[0]?.message : words.nothingGiven
  throw new InputError(words.set(name, why ?? words.nothingGiven))
}

function plainLines(outcome: Outcome, text: string): string[] {
  if (outcome.state === 'value') {
    const { mark } = outcome.shown
    const marked = mark && mark !== outcome.shown.text ? [nearestMark(mark)] : []
    return [
      outcome.shown.text,
      ...marked,
      ...outcome.warnings.flatMap((one) => [words.cautionLine(one.message), ...fixLines(text, [one])]),
      ...outcome.safety.map(words.cautionLine),
    ]
  }
  if (outcome.state === 'waiting') return []
  return outcome.diagnostics.flatMap((d) => [
    words.errorLine(d.message),
    ...(text.length <= 200 && d.to > d.from
      ? [`  ${text}`, `  ${' '.repeat(d.from)}${'^'.repeat(Math.max(1, d.to - d.from))}`]
      : []),
    ...fixLines(text, [d]),
  ])
}

/** The formulas that would be right, a line each. */
const fixLines = (text: string, diagnostics: readonly Diagnostic[]): string[] =>
  wholeFixes(text, diagnostics).map(words.tryLine)
