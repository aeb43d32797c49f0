import { html, nothing, type TemplateResult } from 'lit'
import type { Diagnostic, Scope } from '../../language/index.ts'
import { readDisplayUnit } from '../../units/index.ts'
import type { Cell, Given, NamedCell, Result } from '../../worksheet/index.ts'
import type { FormulaEvent, FormulaField } from '../fields/formula-field.ts'
import { labelled } from '../fields/labelled.ts'
import type { CellSignal, CellView } from '../shared/cell-view.ts'
import { formWords } from './words.ts'

/** What a form needs from the cell's row. */
export interface Form {
  readonly view: CellView
  readonly signal: CellSignal
  readonly scope: () => Scope
  /** Replaces the cell; consecutive changes with the same key are one undo step. */
  readonly put: (cell: Cell, key: string) => void
  /** Renames the cell, or returns why it cannot. */
  readonly rename: (name: string) => string | undefined
  /** Whether an option is shown; the others are folded away until they are asked for. */
  readonly shows: (option: string) => boolean
  /** Called when the label is complete, so that a generated name can be replaced. */
  readonly labelled: () => void
}

/** An object with one text changed; an empty optional text is removed. */
export function withText<T extends object>(of: T, key: string, text: string, optional = true): T {
  const next = { ...of, [key]: text }
  if (optional && text === '') delete (next as Record<string, unknown>)[key]
  return next
}

function unitError(unit: string | undefined): string | undefined {
  try {
    readDisplayUnit(unit ?? '')
    return undefined
  } catch (error) {
    return (error as Error).message
  }
}

export const textField = <C extends Cell>(
  form: Form,
  cell: C,
  key: keyof C & string,
  label: string,
  more: {
    hint?: string
    placeholder?: string
    className?: string
    lines?: 'many' | 'few'
    optional?: boolean
    wrong?: string | undefined
  } = {},
): TemplateResult =>
  labelled({
    label,
    value: String((cell[key] as string | undefined) ?? ''),
    put: (text) => form.put(withText(cell, key, text, more.optional ?? true), `${key}:${cell.id}`),
    ...more,
  })

/** The fields for label, name and, if the cell has a figure, unit. */
export function head(form: Form, cell: NamedCell, withUnit: boolean): TemplateResult {
  return html`
    <div class="head" @change=${form.labelled}>${textField(form, cell, 'label', formWords.label, { className: 'first' })}</div>
    <name-field .value=${cell.name} .take=${form.rename}></name-field>
    ${
      withUnit
        ? labelled({
            label: formWords.unit,
            value: (cell as Given | Result).unit ?? '',
            put: (text) => form.put(withText(cell, 'unit', text), `unit:${cell.id}`),
            wrong: unitError((cell as Given | Result).unit),
          })
        : nothing
    }
  `
}

/** The options of a cell: those that were set when it was opened, and the others behind one line. */
export function options(
  form: Form,
  all: readonly (readonly [option: string, field: TemplateResult])[],
): TemplateResult {
  const folded = all.filter(([option]) => !form.shows(option))
  return html`
    ${all.map(([option, field]) => (form.shows(option) ? field : nothing))}
    ${
      folded.length === 0
        ? nothing
        : html`<details class="all options">
            <summary>${formWords.moreOptions}</summary>
            <div class="form">${folded.map(([, field]) => field)}</div>
          </details>`
    }
  `
}

/** The figure that each name in a formula has now. */
function figuresNow({ view }: Form, text: string): TemplateResult | typeof nothing {
  if (!('sheet' in view)) return nothing
  const { sheet } = view
  const figures = [...new Set(sheet.namesIn(text))].flatMap((name) => {
    const cell = sheet.named(name)
    if (cell?.kind !== 'given' && cell?.kind !== 'result') return []
    const outcome = sheet.outcome(cell.id)
    return [[name, outcome.state === 'value' ? outcome.shown.text : '–'] as const]
  })
  if (figures.length === 0) return nothing
  return html`<p class="all now small">
    <span class="quiet">${formWords.figuresNow}</span>
    ${figures.map(([name, figure]) => html`<span class="pair"><code>${name}</code> ${figure}</span>`)}
  </p>`
}

/** A field for a formula, under its label. */
export function formula(
  form: Form,
  cell: Cell,
  label: string,
  text: string,
  diagnostics: readonly Diagnostic[],
  put: (text: string) => Cell,
  key: string,
): TemplateResult {
  return html`
    <formula-field
      class="all formula"
      label=${label}
      .value=${text}
      .scope=${form.scope}
      .called=${form.view.called}
      .figure=${(name: string) => figureOfName(form, name)}
      .diagnostics=${diagnostics}
      @formula-typed=${(event: FormulaEvent) => form.put(put(event.detail), stepKey(event, `${key}:${cell.id}`))}
    ></formula-field>
    ${figuresNow(form, text)}
  `
}

/** What is put back by Escape is a step of undo of its own. */
const stepKey = (event: Event, key: string): string =>
  (event.target as FormulaField).isRestoring ? `${key}:restored` : key

/** What a cell of the sheet gives now, as shown; the parts of a record by name. */
function figureOfName({ view }: Form, name: string): string {
  const cell = 'sheet' in view ? view.sheet.named(name) : undefined
  if (!cell || !('sheet' in view)) return ''
  const outcome = view.sheet.outcome(cell.id)
  return outcome.state === 'value' ? outcome.shown.text : ''
}
