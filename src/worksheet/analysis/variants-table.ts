import { labelOf } from '../document/label.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { CheckOutcome, Outcome } from '../engine/outcome.ts'
import type { Cell, Given, NamedCell, Variants } from '../schema/document.ts'
import { differenceText } from './difference.ts'
import * as words from './words.ts'

/** A given that at least one set changes. */
export interface Varied {
  readonly name: string
  /** Undefined where the sheet has no such given. */
  readonly cell: Given | undefined
  /** As the sheet has it. */
  readonly present: string
  /** Set by set, as typed; undefined where the sheet's own value is used. */
  readonly texts: readonly (string | undefined)[]
  /** Set by set, what is wrong with the text. */
  readonly wrong: readonly (string | undefined)[]
}

/** The value of a compared cell in one column. */
export interface Compared {
  readonly shown: string
  /** Why there is no figure. */
  readonly why?: string
  /** How it differs from the sheet as it is: `4 mm over`; empty where it does not. */
  readonly difference: string
  readonly differs: boolean
  /** Of a check. */
  readonly state?: CheckOutcome['state']
}

export interface ComparedRow {
  readonly name: string
  readonly cell: NamedCell | undefined
  readonly present: Compared
  readonly sets: readonly Compared[]
}

export interface VariantsTable {
  readonly titles: readonly string[]
  readonly varied: readonly Varied[]
  readonly compared: readonly ComparedRow[]
}

/** Sets of givens side by side: each is computed on a copy, the sheet itself does not change. */
export function variantsTable(sheet: Sheet, variants: Variants): VariantsTable {
  const names = [...new Set(variants.sets.flatMap(({ values }) => Object.keys(values)))]
  const needed = neededBy(sheet, [...names, ...variants.results])
  const trials = variants.sets.map(({ values }) => sheet.trial(needed.map((cell) => refilled(cell, values))))
  return {
    titles: variants.sets.map(({ title }, at) => title.trim() || words.variant(at + 1)),
    varied: names.map((name) => varied(sheet, trials, variants, name)),
    compared: variants.results.map((name) => {
      const cell = named(sheet, name)
      const present = seenIn(sheet, name)
      return { name, cell, present, sets: trials.map((trial) => against(sheet, trial, name, present)) }
    }),
  }
}

/** Texts in rows and columns, for paper and for those who only read. */
export interface TextTable {
  readonly heads: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

const called = (name: string, cell: NamedCell | undefined): string => (cell ? labelOf(cell) : name)

/** The same as texts; what a compared cell says is left to the reader's words. */
export function variantsAsTexts(sheet: Sheet, cell: Variants, said: (one: Compared) => string): TextTable {
  const { titles, varied, compared } = variantsTable(sheet, cell)
  return {
    heads: ['', words.now, ...titles],
    rows: [
      ...varied.map((one) => [called(one.name, one.cell), one.present, ...one.texts.map((text) => text ?? '')]),
      ...compared.map((one) => [called(one.name, one.cell), said(one.present), ...one.sets.map(said)]),
    ],
  }
}

/** The cells some others are computed from, and those themselves, in the order of the sheet. */
function neededBy({ engine, cells }: Sheet, names: readonly string[]): Cell[] {
  const found = new Set<Cell>()
  const open = names.flatMap((name) => engine.named(name) ?? [])
  for (let node = open.pop(); node; node = open.pop()) {
    if (found.has(node.cell)) continue
    found.add(node.cell)
    open.push(...engine.needsOf(node))
  }
  return cells.filter((cell) => found.has(cell))
}

const refilled = (cell: Cell, values: Readonly<Record<string, string>>): Cell =>
  cell.kind === 'given' && Object.hasOwn(values, cell.name) ? { ...cell, value: values[cell.name] as string } : cell

function named(sheet: Sheet, name: string): NamedCell | undefined {
  return sheet.engine.named(name)?.cell
}

function varied(sheet: Sheet, trials: readonly Sheet[], { sets }: Variants, name: string): Varied {
  const found = named(sheet, name)
  const cell = found?.kind === 'given' ? found : undefined
  const own = (values: Readonly<Record<string, string>>): string | undefined =>
    Object.hasOwn(values, name) ? values[name] : undefined
  return {
    name,
    cell,
    present: cell ? shownOf(sheet.outcome(cell.id)) || cell.value : '',
    texts: sets.map(({ values }) => own(values)),
    wrong: sets.map(({ values }, at) => {
      if (own(values) === undefined) return undefined
      if (!cell) return words.noCell(name)
      const outcome = (trials[at] as Sheet).outcome(cell.id)
      return outcome.state === 'error' ? outcome.diagnostics[0]?.message : undefined
    }),
  }
}

const shownOf = (outcome: Outcome): string => (outcome.state === 'value' ? outcome.shown.text : '')

function why(sheet: Sheet, outcome: Outcome): string | undefined {
  if (outcome.state === 'value') return undefined
  if (outcome.state === 'error') return outcome.diagnostics[0]?.message
  const on = outcome.on.map((name) => called(name, named(sheet, name)))
  return on.length > 0 ? words.needs(on) : words.needsFormula
}

function seenIn(sheet: Sheet, name: string): Compared {
  const cell = named(sheet, name)
  const plain = { difference: '', differs: false }
  if (!cell) return { ...plain, shown: '–', why: words.noCell(name) }
  if (cell.kind === 'check') {
    const { state, message } = sheet.check(cell.id)
    return { ...plain, shown: '', state, why: message }
  }
  const outcome = sheet.outcome(cell.id)
  const because = why(sheet, outcome)
  return { ...plain, shown: shownOf(outcome) || '–', ...(because === undefined ? {} : { why: because }) }
}

function against(sheet: Sheet, trial: Sheet, name: string, present: Compared): Compared {
  const seen = seenIn(trial, name)
  const differs = seen.shown !== present.shown || seen.state !== present.state
  const cell = named(sheet, name)
  if (!differs || !cell || cell.kind === 'check') return { ...seen, differs }
  const [was, is] = [sheet.outcome(cell.id), trial.outcome(cell.id)]
  if (was.state !== 'value' || is.state !== 'value' || was.type.kind !== 'number' || is.type.kind !== 'number')
    return { ...seen, differs }
  if (was.type.dimension !== is.type.dimension) return { ...seen, differs }
  const unit = sheet.engine.named(name)?.unit
  return { ...seen, differs, difference: differenceText(is.value as number, was.value as number, was.type, unit) }
}
