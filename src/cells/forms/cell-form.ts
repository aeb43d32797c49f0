import { html, nothing, type TemplateResult } from 'lit'
import { DRAWINGS } from '../../drawings/kinds/registry.ts'
import { FIGURE_LABELS, SORT_LABELS } from '../../kit/labels.ts'
import type { Diagnostic } from '../../language/index.ts'
import { readCoverage } from '../../worksheet/document/coverage.ts'
import { DEFAULT_MARGIN_TEXT, readMargin } from '../../worksheet/engine/margin.ts'
import { KIT_FIGURES } from '../../worksheet/format/kit-sorts.ts'
import {
  type Cell,
  type Check,
  DRAWING_KINDS,
  type Drawing,
  type DrawingKind,
  type Given,
  isNamed,
  KIT_SORTS,
  NAME_PATTERN,
  type Note,
  type Result,
} from '../../worksheet/index.ts'
import { type ByKind, byKind } from '../../worksheet/kinds/index.ts'
import { isGeneratedName, nameOfLabel } from '../../worksheet/table/name-of-label.ts'
import '../fields/formula-field.ts'
import { labelled, selected, ticked } from '../fields/labelled.ts'
import '../fields/name-field.ts'
import type { CellSignal, CellView, DrawingView, GivenView } from '../shared/cell-view.ts'
import { inputsByName, requiredOf } from './drawing-parts.ts'
import { type Form, formula, head, options, textField } from './form-fields.ts'
import '../basic/drawing-cell.ts'
import './wide-form.ts'
import { formWords } from './words.ts'

/** Replaces a generated name by one made from the label, numbered if that is taken; a name that is refused has a reason. */
export function followLabel(cell: Cell, rename: (name: string) => string | undefined): void {
  if (!isNamed(cell) || !isGeneratedName(cell.name)) return
  const name = nameOfLabel(cell.label ?? '')
  if (!name) return
  for (const one of [name, `${name}_2`, `${name}_3`]) if (rename(one) === undefined) return
}

const ENTRIES: readonly (readonly [NonNullable<Given['entry']>, string])[] = [
  ['quantity', formWords.entries.quantity],
  ['size', formWords.entries.size],
  ['list', formWords.entries.list],
  ['choice', formWords.entries.choice],
  ['yes or no', formWords.entries['yes or no']],
  ['text', formWords.entries.text],
  ['date', formWords.entries.date],
  ['kit', formWords.entries.kit],
]

const ROLES: readonly (readonly [NonNullable<Note['role']>, string])[] = [
  ['prose', formWords.roles.prose],
  ['caution', formWords.roles.caution],
  ['heading', formWords.roles.heading],
]

/** A tick for a key of a cell that is only there where it is true. */
const flag = <C extends Given | Result | Check>(
  form: Form,
  cell: C,
  key: keyof C & string,
  label: string,
): TemplateResult =>
  ticked(label, cell[key] === true, (on) => {
    const { [key]: _, ...rest } = cell
    form.put((on ? { ...rest, [key]: true } : rest) as Cell, `${key}:${cell.id}`)
  })

/** The ticks that givens and results have alike. */
const figureFlags = (form: Form, cell: Given | Result): TemplateResult => html`
  ${flag(form, cell, 'more_exact', formWords.fineAdjustment)} ${flag(form, cell, 'stand', formWords.atTheStand)}
  ${flag(form, cell, 'locked', formWords.locked)}
`

/** The sort of equipment, and the givens that take its figures. */
function kitFields(form: Form, cell: Given): TemplateResult {
  const { cells } = (form.view as GivenView).sheet
  const givens = cells.filter((one): one is Given => one.kind === 'given' && one.id !== cell.id)
  const fill = (figure: string, name: string): void => {
    const { [figure]: _, ...others } = cell.fills ?? {}
    form.put({ ...cell, fills: name === '' ? others : { ...others, [figure]: name } }, `fills:${cell.id}`)
  }
  return html`
    ${selected({
      label: formWords.sort,
      value: cell.sort ?? '',
      className: 'all',
      options: [['', formWords.chooseSort], ...KIT_SORTS.map((sort): [string, string] => [sort, SORT_LABELS[sort][0]])],
      put: (sort) => form.put({ ...cell, sort: (sort || undefined) as Given['sort'] }, `sort:${cell.id}`),
    })}
    ${(cell.sort ? KIT_FIGURES[cell.sort] : []).map(({ name: figure }) =>
      selected({
        label: formWords.goesInto(FIGURE_LABELS[figure]?.label ?? figure),
        value: cell.fills?.[figure] ?? '',
        options: [['', formWords.noGiven], ...givens.map(({ name }): [string, string] => [name, name])],
        put: (name) => fill(figure, name),
      }),
    )}
  `
}

/** How values are distributed within ± limits, where there are any: for a simulation. */
function distributionFields(form: Form, cell: Given): TemplateResult | typeof nothing {
  const { outcome } = form.view as GivenView
  const hasLimits = outcome.state === 'value' && outcome.tolerance !== undefined
  if (!hasLimits && cell.distribution === undefined) return nothing
  const choice = selected({
    label: formWords.distribution,
    value: cell.distribution ?? 'rectangular',
    options: Object.entries(formWords.distributions),
    put: (text) => {
      const { distribution: _, coverage, ...rest } = cell
      const distribution = text as NonNullable<Given['distribution']>
      const next: Given = distribution === 'rectangular' ? rest : { ...rest, distribution }
      form.put(
        distribution === 'normal' && coverage !== undefined ? { ...next, coverage } : next,
        `distribution:${cell.id}`,
      )
    },
  })
  return html`
    ${choice}
    ${
      cell.distribution === 'normal'
        ? textField(form, cell, 'coverage', formWords.coverage, {
            placeholder: String(readCoverage(undefined).factor),
            wrong: readCoverage(cell.coverage).error,
          })
        : nothing
    }
  `
}

function givenForm(form: Form, cell: Given): TemplateResult {
  const entry = cell.entry ?? 'quantity'
  const numeric = entry === 'quantity' || entry === 'size' || entry === 'list'
  return html`
    ${head(form, cell, numeric)}
    ${selected({
      label: formWords.filledWith,
      value: entry,
      options: ENTRIES,
      put: (value) => form.put({ ...cell, entry: value as typeof entry }, `entry:${cell.id}`),
    })}
    ${textField(form, cell, 'value', formWords.value, { optional: false })}
    ${
      entry === 'choice'
        ? labelled({
            label: formWords.offers,
            hint: formWords.oneALine,
            className: 'all',
            lines: 'many',
            value: (cell.options ?? []).join('\n'),
            put: (text) => form.put({ ...cell, options: text.split('\n') }, `options:${cell.id}`),
          })
        : nothing
    }
    ${entry === 'kit' ? kitFields(form, cell) : nothing}
    ${numeric ? distributionFields(form, cell) : nothing}
    <div class="all ticks">
      ${figureFlags(form, cell)} ${flag(form, cell, 'fixed', formWords.fixed)}
      ${entry === 'quantity' ? flag(form, cell, 'whole', formWords.whole) : nothing}
      ${
        numeric
          ? html`<button type="button" class="word" @click=${() => form.put(asResult(cell), `to-result:${cell.id}`)}>${formWords.makeResult}</button>`
          : nothing
      }
    </div>
    ${options(form, [
      ['hint', textField(form, cell, 'hint', formWords.hint, { className: 'all' })],
      ...(entry === 'quantity'
        ? ([
            ['least', textField(form, cell, 'least', formWords.least)],
            ['most', textField(form, cell, 'most', formWords.most)],
          ] as const)
        : []),
    ])}
  `
}

function resultForm(form: Form, cell: Result, diagnostics: readonly Diagnostic[]): TemplateResult {
  return html`
    ${head(form, cell, true)}
    ${formula(form, cell, formWords.formula, cell.formula, diagnostics, (text) => ({ ...cell, formula: text }), 'formula')}
    <div class="all ticks">
      ${figureFlags(form, cell)}
      <button type="button" class="word" @click=${() => form.put(asGiven(form, cell), `to-given:${cell.id}`)}>${formWords.makeGiven}</button>
    </div>
    ${options(form, [
      ['measure', textField(form, cell, 'measure', formWords.howMeasured, { className: 'all' })],
      ['hint', textField(form, cell, 'hint', formWords.hint, { className: 'all' })],
    ])}
  `
}

const shared = ({ id, name, label, unit, hint, more_exact, stand, locked }: Given | Result) => ({
  id,
  name,
  ...(label === undefined ? {} : { label }),
  ...(unit === undefined ? {} : { unit }),
  ...(hint === undefined ? {} : { hint }),
  ...(more_exact === undefined ? {} : { more_exact }),
  ...(stand === undefined ? {} : { stand }),
  ...(locked === undefined ? {} : { locked }),
})

/** A given as a result whose formula is its value: `420` in mm is `420 mm`. */
function asResult(cell: Given): Result {
  const bare = /^\s*[+-]?[\d.]+\s*$/.test(cell.value)
  const unit = bare && cell.unit && !/[:/]/.test(cell.unit) ? ` ${cell.unit}` : ''
  return { kind: 'result', ...shared(cell), formula: `${cell.value.trim()}${unit}` }
}

/** A result as a given with the figure it has now; its formula goes, and undo brings it back. */
function asGiven(form: Form, cell: Result): Given {
  const { outcome } = form.view
  const shown =
    outcome && 'state' in outcome && outcome.state === 'value' && 'shown' in outcome ? outcome.shown.text : ''
  return { kind: 'given', ...shared(cell), value: shown }
}

function checkForm(form: Form, cell: Check, diagnostics: readonly Diagnostic[]): TemplateResult {
  return html`
    ${head(form, cell, false)}
    ${formula(form, cell, formWords.condition, cell.condition, diagnostics, (text) => ({ ...cell, condition: text }), 'condition')}
    ${textField(form, cell, 'message', formWords.messageFail, { className: 'all', lines: 'few', optional: false })}
    <div class="all ticks">${flag(form, cell, 'stand', formWords.atTheStand)}</div>
    ${options(form, [
      [
        'passes',
        textField(form, cell, 'passes', formWords.messagePass, {
          className: 'all',
          lines: 'few',
          hint: formWords.insertFigure,
        }),
      ],
      [
        'margin',
        textField(form, cell, 'margin', formWords.margin, {
          placeholder: DEFAULT_MARGIN_TEXT,
          wrong: readMargin(cell.margin).error,
        }),
      ],
    ])}
  `
}

function noteForm(form: Form, cell: Note): TemplateResult {
  const role = cell.role ?? 'prose'
  return html`
    ${selected({
      label: formWords.noteRole,
      value: role,
      options: ROLES,
      put: (value) => form.put({ ...cell, role: value as typeof role }, `role:${cell.id}`),
    })}
    ${
      role === 'heading'
        ? html`${textField(form, cell, 'text', formWords.heading, { className: 'first', optional: false })}
            ${textField(form, cell, 'about', formWords.about, { className: 'all' })}`
        : textField(form, cell, 'text', formWords.text, { className: 'all first', lines: 'many', optional: false })
    }
  `
}

function withPart(from: Drawing['from'], part: string, text: string): Drawing['from'] {
  const { [part]: _, ...others } = from
  return text === '' ? others : { ...others, [part]: text }
}

/** A drawing of another kind keeps its inputs and takes missing ones from cells with the names of the inputs. */
const withKind = (form: Form, cell: Drawing, kind: DrawingKind): Drawing => ({
  ...cell,
  drawing: kind,
  from: { ...inputsByName(kind, 'sheet' in form.view ? form.view.sheet.cells : []), ...cell.from },
})

/** The complete names of a text; incomplete ones are ignored until they are complete. */
function withMoves(cell: Drawing, text: string): Drawing {
  const { moves: _, ...rest } = cell
  const names = text.split(/[\s,;]+/).filter((one) => NAME_PATTERN.test(one))
  return names.length === 0 ? (rest as Drawing) : ({ ...rest, moves: names } as Drawing)
}

function inputLabel({ drawing, from }: Drawing, part: string, label: string): string {
  const required = requiredOf(drawing, part, from)
  return required === undefined ? label : formWords.inputRequired(label, required)
}

function drawingForm(form: Form, cell: Drawing, missing: Readonly<Record<string, string>>): TemplateResult {
  return html`
    ${textField(form, cell, 'title', formWords.title, { className: 'all first' })}
    ${selected({
      label: formWords.shows,
      value: cell.drawing,
      options: DRAWING_KINDS.map((kind) => [kind, DRAWINGS[kind].title] as const),
      put: (kind) => form.put(withKind(form, cell, kind as DrawingKind), `drawing:${cell.id}`),
    })}
    <drawing-cell class="all" .view=${form.signal as CellSignal<DrawingView>}></drawing-cell>
    ${DRAWINGS[cell.drawing].inputs.map(({ name: part, label }) =>
      formula(
        form,
        cell,
        missing[part] ? formWords.inputMissing(label, missing[part]) : inputLabel(cell, part, label),
        cell.from[part] ?? '',
        [],
        (next) => ({ ...cell, from: withPart(cell.from, part, next) }),
        `from-${part}`,
      ),
    )}
    ${
      cell.from.lamps === undefined
        ? nothing
        : labelled({
            label: formWords.moves,
            hint: formWords.namesApart,
            className: 'all',
            value: (cell.moves ?? []).join(', '),
            put: (text) => form.put(withMoves(cell, text), `moves:${cell.id}`),
          })
    }
  `
}

const wide = (_: Cell, form: Form): TemplateResult => html`<wide-form .form=${form}></wide-form>`

/** The fields of a cell in Build, by its kind. */
const FORMS: ByKind<[Form], TemplateResult> = {
  given: (cell, form) => givenForm(form, cell),
  result: (cell, form) => resultForm(form, cell, ownDiagnostics(form.view)),
  check: (cell, form) => checkForm(form, cell, ownDiagnostics(form.view)),
  note: (cell, form) => noteForm(form, cell),
  drawing: (cell, form) => {
    const { outcome } = form.view
    return drawingForm(form, cell, outcome && 'missing' in outcome ? outcome.missing : {})
  },
  steps: wide,
  table: wide,
  range: wide,
  variants: wide,
  run: wide,
  frame: wide,
  function: wide,
}

/** What is edited of a cell in Build, by its kind. */
export const cellForm = (form: Form): TemplateResult => byKind(FORMS, form.view.cell, form)

/** The errors and warnings of the cell's own formula. */
export function ownDiagnostics({ outcome }: CellView): readonly Diagnostic[] {
  if (!outcome || !('state' in outcome)) return []
  if (outcome.state === 'value') return outcome.warnings
  if (outcome.state === 'waiting') return []
  return 'origin' in outcome && outcome.origin !== undefined ? [] : 'diagnostics' in outcome ? outcome.diagnostics : []
}
