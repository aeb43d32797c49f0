import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import type { Diagnostic } from '../../language/index.ts'
import { MAX_COLUMNS } from '../../worksheet/format/format.ts'
import type { Column, TableCell } from '../../worksheet/index.ts'
import { columnLabel, freeColumnName } from '../../worksheet/table/columns.ts'
import { FOOTER_LABELS, footerOf, USUAL_SHARE } from '../../worksheet/table/footer.ts'
import { nameOfLabel } from '../../worksheet/table/name-of-label.ts'
import { hasFormula, readColumn } from '../../worksheet/table/read-table.ts'
import type { CompiledColumn } from '../../worksheet/table/table-node.ts'
import { tableOf } from '../../worksheet/table/table-node.ts'
import { requestChange, type WideView } from '../shared/cell-view.ts'
import { type Form, head, withText } from './form-fields.ts'
import { tableFormStyle } from './table-form-style.ts'
import '../fields/formula-field.ts'
import type { FormulaEvent } from '../fields/formula-field.ts'
import { labelled, labelledStyle, selected, ticked } from '../fields/labelled.ts'
import '../fields/name-field.ts'
import { openedWords } from '../opened/words.ts'
import { errorMessage, errorMessageStyle } from '../shared/error-message.ts'
import { field, shared } from '../style/styles.ts'
import { withColumn, withColumnMoved, withoutColumn } from '../table/row-edits.ts'
import { formWords, tableFormWords } from './words.ts'

type Foot = NonNullable<Column['foot']>[number]
type Entry = NonNullable<Column['entry']> | 'formula'
/** The part of a column to focus after it is drawn. */
type Goal = { readonly at: number; readonly on: string }

const ENTRIES: readonly (readonly [Entry, string])[] = [
  ['quantity', tableFormWords.entries.quantity],
  ['text', tableFormWords.entries.text],
  ['choice', tableFormWords.entries.choice],
  ['tick', tableFormWords.entries.tick],
  ['date', tableFormWords.entries.date],
  ['time', tableFormWords.entries.time],
  ['date and time', tableFormWords.entries['date and time']],
  ['formula', tableFormWords.entries.formula],
]

const FIGURES = Object.entries(FOOTER_LABELS) as [Foot['figure'], string][]
const MOST_FEET = 6
/** Whether a name was generated when the column was added. */
const isGenerated = (name: string): boolean => /^column(_\d+)?$/.test(name)

let acts = 0

function withEntry(column: Column, entry: Entry): Column {
  const { entry: _, formula, ...rest } = column
  if (entry === 'formula') return { ...rest, formula: formula ?? '' }
  return entry === 'quantity' ? rest : { ...rest, entry }
}

/** The columns of a table in Build, one open at a time. */
@customElement('table-form')
export class TableForm extends LitElement {
  static override styles = [shared, field, labelledStyle, errorMessageStyle, tableFormStyle]

  @property({ attribute: false }) form!: Form
  @property({ attribute: false }) cell!: TableCell
  @state() private opened = -1
  private goal: Goal | undefined

  private put(cell: TableCell, key: string): void {
    this.form.put(cell, `${key}:${cell.id}`)
  }

  /** Makes a change that is one undo step, and then focuses the changed column. */
  private act(cell: TableCell, goal: Goal): void {
    this.goal = goal
    this.opened = goal.at
    this.put(cell, `columns:${++acts}`)
  }

  private edit(at: number, column: Column, key: string): void {
    this.put({ ...this.cell, columns: this.cell.columns.with(at, column) }, `${key}:${at}`)
  }

  override updated(changed: PropertyValues<this>): void {
    const { goal } = this
    // The focus waits until the changed columns have arrived.
    if (!goal || !changed.has('cell')) return
    this.goal = undefined
    const place = this.renderRoot.querySelector(`li:nth-child(${goal.at + 1})`)
    const on = place?.querySelector<HTMLElement>(goal.on) ?? this.renderRoot.querySelector<HTMLElement>('.add')
    on?.focus()
    on?.scrollIntoView({ block: 'nearest' })
  }

  private add(): void {
    const { cell } = this
    const column: Column = { name: freeColumnName('column', cell.columns) }
    this.act(withColumn(cell, cell.columns.length, column), { at: cell.columns.length, on: '.label-field input' })
  }

  private move(at: number, by: -1 | 1): void {
    const moved = withColumnMoved(this.cell, at, at + by)
    if (moved !== this.cell) this.act(moved, { at: at + by, on: by < 0 ? '.up' : '.down' })
  }

  private removeColumn(at: number): void {
    this.act(withoutColumn(this.cell, at), { at: Math.min(at, this.cell.columns.length - 2), on: '.call' })
  }

  private rename(at: number, name: string): string | undefined {
    return requestChange(this, { do: 'rename column', id: this.cell.id, column: at, name })
  }

  /** Replaces a generated name by one made from the label. */
  private followLabel(at: number): void {
    const column = this.cell.columns[at]
    const name = column && isGenerated(column.name) ? nameOfLabel(column.label ?? '') : ''
    if (name !== '') this.rename(at, freeColumnName(name, this.cell.columns))
  }

  private compiled(at: number): CompiledColumn | undefined {
    const { sheet } = this.form.view as WideView<TableCell>
    const compiled = tableOf(sheet.engine.node(this.cell.id))?.columns[at]
    // While the sheet is one update behind, the result may belong to another column.
    return compiled?.column === this.cell.columns[at] ? compiled : undefined
  }

  private definition(column: Column): string {
    const unit = column.unit ? ` [${column.unit}]` : ''
    return `${column.name}${unit}${hasFormula(column) ? ` = ${column.formula}` : ''}`
  }

  private formula(
    label: string,
    text: string,
    diagnostics: readonly Diagnostic[],
    put: (text: string) => void,
    className: string,
  ): TemplateResult {
    const { sheet } = this.form.view as WideView<TableCell>
    return html`<formula-field
      class=${className}
      label=${label}
      .value=${text}
      .scope=${() => tableOf(sheet.engine.node(this.cell.id))?.scope ?? this.form.scope()}
      .called=${(name: string) => this.called(name)}
      .diagnostics=${diagnostics}
      @formula-typed=${(event: FormulaEvent) => put(event.detail)}
      @formula-left=${(event: Event) => {
        event.stopPropagation()
        ;(event.target as HTMLElement).closest('li')?.querySelector<HTMLElement>('.call')?.focus()
      }}
    ></formula-field>`
  }

  private readonly called = (name: string): string => {
    const column = this.cell.columns.find((one) => one.name === name)
    return column ? columnLabel(column) : this.form.view.called(name)
  }

  private fields(column: Column, at: number): TemplateResult {
    const entry: Entry = hasFormula(column) ? 'formula' : (column.entry ?? 'quantity')
    const compiled = this.compiled(at)
    const diagnostics = compiled?.diagnostics ?? []
    const unitError = readColumn(column).error?.message
    const last = this.cell.columns.length - 1
    const text = (key: 'label' | 'unit' | 'default', label: string, className = '', wrong?: string): TemplateResult =>
      labelled({
        label,
        value: column[key] ?? '',
        className,
        wrong,
        put: (typed) => this.edit(at, withText(column, key, typed), key),
      })
    return html`
      <div class="fields">
        <div @change=${() => this.followLabel(at)}>${text('label', tableFormWords.heading, 'label-field')}</div>
        <name-field .value=${column.name} .take=${(name: string) => this.rename(at, name)}></name-field>
        ${selected({
          label: formWords.filledWith,
          value: entry,
          options: ENTRIES,
          put: (value) => this.edit(at, withEntry(column, value as Entry), 'entry'),
        })}
        ${entry === 'quantity' || entry === 'formula' || entry === 'choice' ? text('unit', formWords.unit, '', unitError) : nothing}
        ${
          entry === 'choice'
            ? labelled({
                label: formWords.offers,
                hint: formWords.oneALine,
                className: 'all',
                lines: 'many',
                value: (column.options ?? []).join('\n'),
                put: (typed) => this.edit(at, { ...column, options: typed.split('\n') }, 'options'),
              })
            : nothing
        }
        ${
          entry === 'formula'
            ? this.formula(
                tableFormWords.rowFormula,
                column.formula ?? '',
                diagnostics,
                (formula) => this.edit(at, { ...column, formula }, 'formula'),
                'all formula',
              )
            : diagnostics.length > 0 && unitError === undefined
              ? html`<div class="all">${errorMessage('', diagnostics, () => {})}</div>`
              : nothing
        }
        ${entry === 'tick' || entry === 'formula' ? nothing : text('default', tableFormWords.usual)}
        ${
          entry === 'tick'
            ? nothing
            : html`<div class="all">
                ${ticked(
                  entry === 'formula' ? tableFormWords.emptyIfUsedIsEmpty : tableFormWords.mayBeEmpty,
                  column.may_be_empty === true,
                  (on) => {
                    const { may_be_empty: _, ...rest } = column
                    this.edit(at, on ? { ...rest, may_be_empty: true } : rest, 'empty')
                  },
                )}
              </div>`
        }
        <div class="all">
          ${this.feet(column, at)}
          <div class="words">
            <button type="button" class="word up" aria-disabled=${at === 0} @click=${() => this.move(at, -1)}>${openedWords.up}</button>
            <button type="button" class="word down" aria-disabled=${at === last} @click=${() => this.move(at, 1)}>${openedWords.down}</button>
            <button type="button" class="word" @click=${() => this.removeColumn(at)}>${tableFormWords.removeColumn}</button>
          </div>
        </div>
      </div>
    `
  }

  private feet(column: Column, at: number): TemplateResult {
    const feet = column.foot ?? []
    const { sheet } = this.form.view as WideView<TableCell>
    const node = sheet.engine.node(this.cell.id)
    const shown = node && this.compiled(at) ? footerOf(sheet.engine, node)[at] : undefined
    const put = (next: readonly Foot[], key: string): void => {
      const { foot: _, ...rest } = column
      this.edit(at, next.length > 0 ? { ...rest, foot: [...next] } : rest, key)
    }
    return html`
      ${feet.map(
        (foot, which) => html`
          <div class="foot">
            ${selected({
              label: tableFormWords.footer,
              value: foot.figure,
              options: FIGURES,
              put: (figure) => put(feet.with(which, { ...foot, figure: figure as Foot['figure'] }), `figure-${which}`),
            })}
            ${
              foot.figure === 'percentile'
                ? labelled({
                    label: tableFormWords.share,
                    value: foot.share ?? '',
                    placeholder: USUAL_SHARE,
                    put: (share) => put(feet.with(which, withText(foot, 'share', share)), `share-${which}`),
                  })
                : nothing
            }
            ${this.formula(
              tableFormWords.rowsWhere,
              foot.where ?? '',
              shown?.[which]?.diagnostics ?? [],
              (where) => put(feet.with(which, withText(foot, 'where', where)), `where-${which}`),
              'where',
            )}
            <button type="button" class="word" @click=${() => put(feet.toSpliced(which, 1), `foot-${++acts}`)}>${openedWords.remove}<span class="unseen"> ${FOOTER_LABELS[foot.figure]}</span></button>
          </div>
        `,
      )}
      ${
        feet.length < MOST_FEET
          ? html`<button type="button" class="word" @click=${() => put([...feet, { figure: 'sum' }], `foot-${++acts}`)}>${tableFormWords.addFooter}</button>`
          : nothing
      }
    `
  }

  override render(): TemplateResult {
    const { cell, opened } = this
    return html`
      <ol aria-label=${tableFormWords.columns}>
        ${repeat(
          cell.columns,
          (_, at) => at,
          (column, at) => html`
            <li class=${opened === at ? 'open' : ''}>
              <button
                type="button"
                class="call"
                aria-expanded=${opened === at}
                @click=${() => {
                  this.opened = opened === at ? -1 : at
                }}
              >
                <span class="number">${at + 1}</span>
                <span class="label"><span class="unseen">${tableFormWords.column}</span>${columnLabel(column)}</span>
                <span class="mono">${this.definition(column)}</span>
              </button>
              ${opened === at ? this.fields(column, at) : nothing}
            </li>
          `,
        )}
      </ol>
      ${
        cell.columns.length < MAX_COLUMNS
          ? html`<button type="button" class="press add" @click=${this.add}>${tableFormWords.addColumn}</button>`
          : nothing
      }
      <p class="small quiet">${tableFormWords.rowsElsewhere}</p>
    `
  }
}

/** What is edited of a table in Build. */
export const form = (form: Form, cell: TableCell): TemplateResult => html`
  ${head(form, cell, false)}
  <table-form class="all" .form=${form} .cell=${cell}></table-form>
`
