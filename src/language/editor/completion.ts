import type { Completion, CompletionContext, CompletionResult } from '@codemirror/autocomplete'
import { syntaxTree } from '@codemirror/language'
import { unitSymbols } from '../../units/index.ts'
import { signature } from '../checking/arguments.ts'
import type { Callable, Guide } from '../values/function-record.ts'
import type { Scope } from '../values/scope.ts'
import { describeType } from '../values/types.ts'
import { argumentsByName } from './fill-arguments.ts'
import { recordDom } from './record-dom.ts'
import { completionWords, unitNotes } from './words.ts'

const cells = (scope: Scope): Completion[] =>
  [...scope.names()].map((name) => {
    const type = scope.typeOf(name)
    return {
      label: name,
      detail: type === undefined || type === 'unknown' ? completionWords.inError : describeType(type),
      boost: 2,
    }
  })

/** Other words are offered only after this number of letters: one or two are found in nearly every word. */
const ENOUGH_TYPED = 3

const begins = (word: string, typed: string): boolean =>
  typed.length >= ENOUGH_TYPED && word.toLowerCase().startsWith(typed.toLowerCase())

/** A function under its own name, and under the other words it is looked for by. */
function functions(scope: Scope, guide: Guide, typed: string): Completion[] {
  return [...scope.library.values()].flatMap((record) => [
    completionOf(record, guide, record.name, scope),
    ...(guide.get(record.name)?.also ?? [])
      .filter((word) => begins(word, typed))
      .map((word) => ({
        ...completionOf(record, guide, word, scope),
        displayLabel: `${record.name} (${word})`,
        boost: -1,
      })),
  ])
}

/** A call put in with the arguments that cells are named like; the first that is missing is selected. */
function completionOf(record: Callable, guide: Guide, label: string, scope: Scope): Completion {
  return {
    label,
    detail: guide.get(record.name)?.about ?? '',
    apply: (view, _completion, from, to) => {
      // A bracket that is there already is not doubled.
      if (view.state.sliceDoc(to, to + 1) === '(') {
        view.dispatch({
          changes: { from, to, insert: record.name },
          selection: { anchor: from + record.name.length },
        })
        return
      }
      const args = argumentsByName(record, scope)
      const insert = `${record.name}(${args ?? ''})`
      const missing = insert.indexOf('?')
      const inside = args === undefined && record.parameters.length > 0 ? insert.length - 1 : insert.length
      view.dispatch({
        changes: { from, to, insert },
        selection: missing < 0 ? { anchor: from + inside } : { anchor: from + missing, head: from + missing + 1 },
      })
    },
    info: () => recordDom(record, guide.get(record.name)),
  }
}

const WORDS: readonly Completion[] = [
  { label: 'when', detail: completionWords.when },
  { label: 'and', detail: completionWords.and },
  { label: 'or', detail: completionWords.or },
  { label: 'not', detail: completionWords.not },
  { label: 'yes' },
  { label: 'no' },
]

/** Those with a prefix that the table spells out of its parts. */
const EVERYDAY = ['mm', 'cm', 'µm', 'nm', 'km', 'ms', 'kg', 'mg', 'kW', 'kWh', 'kHz', 'klx', 'GB', 'MB', 'kB']

let units: readonly Completion[] | undefined
const unitList = (): readonly Completion[] => {
  units ??= [
    ...EVERYDAY.map((symbol) => ({ label: symbol, boost: 1 })),
    ...unitSymbols()
      .filter((symbol) => !EVERYDAY.includes(symbol))
      .map((symbol) => {
        const note = unitNotes[symbol]
        return note === undefined ? { label: symbol } : { label: symbol, detail: note }
      }),
  ]
  return units
}

const AFTER_NUMBER = /\d(?: ?)([A-Za-zµ°%‰Ω]*)$/
const IN_BRACKETS = /\[[^\]]*?([A-Za-zµ°%‰Ω]*)$/

function completeUnit(context: CompletionContext): CompletionResult | undefined {
  const before = context.state.sliceDoc(0, context.pos)
  const match = IN_BRACKETS.exec(before) ?? AFTER_NUMBER.exec(before)
  if (!match) return undefined
  // A digit inside a name (`lens_2`) is no number.
  if (match[0].startsWith('[') === false && /[A-Za-z_]\d*$/.test(before.slice(0, match.index + 1))) return undefined
  const word = match[1] as string
  if (word === '' && !context.explicit) return undefined
  return { from: context.pos - word.length, options: unitList(), validFor: /^[A-Za-zµ°%‰Ω]*$/ }
}

function completeArgument(context: CompletionContext, scope: Scope): Completion[] {
  const node = syntaxTree(context.state).resolveInner(context.pos, -1)
  for (let at: typeof node | null = node; at; at = at.parent) {
    if (at.name !== 'Call') continue
    const name = at.firstChild
    const record = name && scope.library.get(context.state.sliceDoc(name.from, name.to))
    if (!record) continue
    return record.parameters.map((parameter) => ({
      label: `${parameter.name}: `,
      displayLabel: `${parameter.name}:`,
      detail: parameter.about,
      boost: 1,
      info: signature(record),
    }))
  }
  return []
}

function completePart(context: CompletionContext, scope: Scope): CompletionResult | undefined {
  const match = /([A-Za-z_]\w*)\.(\w*)$/.exec(context.state.sliceDoc(0, context.pos))
  if (!match) return undefined
  const type = scope.typeOf(match[1] as string)
  if (type === undefined || type === 'unknown' || type.kind !== 'record') return undefined
  return {
    from: context.pos - (match[2] as string).length,
    options: Object.entries(type.parts).map(([name, part]) => ({ label: name, detail: describeType(part) })),
    validFor: /^\w*$/,
  }
}

/**
 * Completes names of cells, functions, named arguments, parts of records, and units where a unit may follow; nothing
 * where the text before the caret is no formula.
 */
export const completeFormula =
  (scope: () => Scope, guide: Guide, isFormula: (before: string) => boolean = () => true) =>
  (context: CompletionContext): CompletionResult | null => {
    if (!context.explicit && !isFormula(context.state.sliceDoc(0, context.pos))) return null
    const unit = completeUnit(context) ?? completePart(context, scope())
    if (unit) return unit
    const word = context.matchBefore(/[A-Za-z_]\w*/)
    if (!word && !context.explicit) return null
    const now = scope()
    const typed = word?.text ?? ''
    return {
      from: word ? word.from : context.pos,
      options: [...cells(now), ...completeArgument(context, now), ...functions(now, guide, typed), ...WORDS],
      // Until enough is typed for other words, the list is made anew at every key.
      ...(typed.length >= ENOUGH_TYPED ? { validFor: /^\w*$/ } : {}),
    }
  }
