import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import type { Diagnostic } from '../../language/index.ts'
import { nameOfLabel } from '../../worksheet/document/name-of-label.ts'
import type { Column, TableCell } from '../../worksheet/index.ts'
import { MAX_COLUMNS } from '../../worksheet/schema/format.ts'
import { columnLabel, freeColumnName } from '../../worksheet/table/columns.ts'
import { FOOTER_LABELS, footerOf, USUAL_SHARE } from '../../worksheet/table/footer.ts'
import { hasFormula, readColumn } from '../../worksheet/table/read-table.ts'
import type { CompiledColumn } from '../../worksheet/table/table-node.ts'
import { tableOf } from '../../worksheet/table/table-node.ts'
import { requestChange, type WideView } from '../shared/cell-view.ts'
import { type Form, head } from './form-fields.ts'
import '../fields/formula-field.ts'
import type { FormulaEvent } from '../fields/formula-field.ts'
import { labelled, labelledStyle, selected, ticked } from '../shared/labelled.ts'
import '../fields/name-field.ts'
import { errorMessage, errorMessageStyle } from '../shared/error-message.ts'
import { field, shared } from '../style/styles.ts'
import { withColumn, withColumnMoved, withoutColumn } from '../table/row-edits.ts'

type Foot = NonNullable<Column['foot']>[number]
type Entry = NonNullable<Column['entry']> | 'formula'
/** What takes the focus once it is drawn. */
type Goal = { readonly at: number; readonly on: string }

const ENTRIES: readonly (readonly [Entry, string])[] = [
  ['quantity', 'A quantity'],
  ['text', 'Words'],
  ['choice', 'One of a list'],
  ['tick', 'A tick'],
  ['date and time', 'A date, with or without a time'],
  ['formula', 'Worked out by a formula'],
]

const FIGURES = Object.entries(FOOTER_LABELS) as [Foot['figure'], string][]
const MOST_FEET = 6
const isMadeUp = (name: string): boolean => /^column(_\d+)?$/.test(name)

let acts = 0

/** An optional key left empty is taken out. */
function withText<T extends object>(of: T, key: string, text: string): T {
  const next = { ...of, [key]: text }
  if (text === '') delete (next as Record<string, unknown>)[key]
  return next
}

function withEntry(column: Column, entry: Entry): Column {
  const { entry: _, formula, ...rest } = column
  if (entry === 'formula') return { ...rest, formula: formula ?? '' }
  return entry === 'quantity' ? rest : { ...rest, entry }
}

/** The columns of a table as they are built, one open at a time. */
@customElement('table-form')
export class TableForm extends LitElement {
  static override styles = [
    shared,
    field,
    labelledStyle,
    errorMessageStyle,
    css`
      :host {
        container-type: inline-size;
      }
      ol {
        list-style: none;
        margin: 0;
        padding: 0;
        border-block-start: 1px solid var(--rule);
      }
      li {
        border-block-end: 1px solid var(--rule);
      }
      .open {
        padding-inline-start: calc(1rem - 4px);
        border-inline-start: 4px solid var(--ink);
      }
      .call {
        display: grid;
        grid-template-columns: 1.8rem minmax(0, 1fr) minmax(0, 1fr);
        gap: 0 0.7rem;
        align-items: center;
        inline-size: 100%;
        min-block-size: 44px;
        padding: 0.2rem 0;
        border: 0;
        background: none;
        text-align: start;
        cursor: pointer;
        overflow-wrap: anywhere;
      }
      .call:hover .label {
        text-decoration: underline;
        text-underline-offset: 0.25em;
      }
      .number {
        text-align: end;
        color: var(--quiet);
        font-variant-numeric: tabular-nums;
      }
      .call .mono {
        font-size: 0.86rem;
        color: var(--quiet);
      }
      .fields {
        display: grid;
        grid-template-columns: repeat(3, minmax(0, 1fr));
        gap: 0.7rem 0.9rem;
        align-items: start;
        padding-block: 0.2rem 0.3rem;
      }
      .all {
        grid-column: 1 / -1;
      }
      .foot {
        display: grid;
        grid-template-columns: 9rem 7rem minmax(0, 1fr) auto;
        gap: 0.2rem 0.9rem;
        align-items: end;
        padding-block-end: 0.5rem;
      }
      .foot .where {
        grid-column: 3;
        align-self: start;
      }
      .foot .word {
        grid-column: 4;
      }
      .add {
        margin-block-start: 0.6rem;
      }
      @container (max-width: 40rem) {
        .fields,
        .foot {
          grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
        }
        .foot .where {
          grid-column: 1 / -1;
        }
        .foot .word {
          grid-column: 1;
        }
      }
      @container (max-width: 26rem) {
        .fields {
          grid-template-columns: minmax(0, 1fr);
        }
        .call {
          grid-template-columns: 1.8rem minmax(0, 1fr);
        }
        .call .mono {
          grid-column: 2;
        }
      }
    `,
  ]

  @property({ attribute: false }) form!: Form
  @property({ attribute: false }) cell!: TableCell
  @state() private opened = -1
  private goal: Goal | undefined

  private put(cell: TableCell, key: string): void {
    this.form.put(cell, `${key}:${cell.id}`)
  }

  /** A step of undo of its own; what it is done on takes the focus again. */
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
    // Until the columns are those asked for, there is nothing to go to.
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
    if (moved !== this.cell) this.act(moved, { at: at + by, on: by < 0 ? '.earlier' : '.later' })
  }

  private takeOut(at: number): void {
    this.act(withoutColumn(this.cell, at), { at: Math.min(at, this.cell.columns.length - 2), on: '.call' })
  }

  private rename(at: number, name: string): string | undefined {
    return requestChange(this, { do: 'rename column', id: this.cell.id, column: at, name })
  }

  /** A made-up name gives way to one made from the label. */
  private followLabel(at: number): void {
    const column = this.cell.columns[at]
    const name = column && isMadeUp(column.name) ? nameOfLabel(column.label ?? '') : ''
    if (name !== '') this.rename(at, freeColumnName(name, this.cell.columns))
  }

  private meaning(at: number): CompiledColumn | undefined {
    const { sheet } = this.form.view as WideView<TableCell>
    const meaning = tableOf(sheet.engine.node(this.cell.id))?.columns[at]
    // While the sheet is a step behind, what is said would be of another column.
    return meaning?.column === this.cell.columns[at] ? meaning : undefined
  }

  private written(column: Column): string {
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
    const meaning = this.meaning(at)
    const diagnostics = meaning?.diagnostics ?? []
    const unitWrong = readColumn(column).error?.message
    const last = this.cell.columns.length - 1
    const text = (key: 'label' | 'unit', label: string, className = '', wrong?: string): TemplateResult =>
      labelled({
        label,
        value: column[key] ?? '',
        className,
        wrong,
        put: (typed) => this.edit(at, withText(column, key, typed), key),
      })
    return html`
      <div class="fields">
        <div @change=${() => this.followLabel(at)}>${text('label', 'Heading', 'label-field')}</div>
        <name-field .value=${column.name} .take=${(name: string) => this.rename(at, name)}></name-field>
        ${selected({
          label: 'Filled in with',
          value: entry,
          options: ENTRIES,
          put: (value) => this.edit(at, withEntry(column, value as Entry), 'entry'),
        })}
        ${entry === 'quantity' || entry === 'formula' || entry === 'choice' ? text('unit', 'Unit', '', unitWrong) : nothing}
        ${
          entry === 'choice'
            ? labelled({
                label: 'What it offers',
                hint: 'one a line',
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
                'Formula, over the row’s other columns and the sheet',
                column.formula ?? '',
                diagnostics,
                (formula) => this.edit(at, { ...column, formula }, 'formula'),
                'all formula',
              )
            : diagnostics.length > 0 && unitWrong === undefined
              ? html`<div class="all">${errorMessage('', diagnostics, () => {})}</div>`
              : nothing
        }
        ${
          entry === 'tick'
            ? nothing
            : html`<div class="all">
                ${ticked(
                  entry === 'formula' ? 'May stay empty where a column it uses is' : 'May stay empty',
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
            <button type="button" class="word earlier" aria-disabled=${at === 0} @click=${() => this.move(at, -1)}>Earlier</button>
            <button type="button" class="word later" aria-disabled=${at === last} @click=${() => this.move(at, 1)}>Later</button>
            <button type="button" class="word" @click=${() => this.takeOut(at)}>Remove the column</button>
          </div>
        </div>
      </div>
    `
  }

  private feet(column: Column, at: number): TemplateResult {
    const feet = column.foot ?? []
    const { sheet } = this.form.view as WideView<TableCell>
    const node = sheet.engine.node(this.cell.id)
    const shown = node && this.meaning(at) ? footerOf(sheet.engine, node)[at] : undefined
    const put = (next: readonly Foot[], key: string): void => {
      const { foot: _, ...rest } = column
      this.edit(at, next.length > 0 ? { ...rest, foot: [...next] } : rest, key)
    }
    return html`
      ${feet.map(
        (foot, which) => html`
          <div class="foot">
            ${selected({
              label: 'Under it',
              value: foot.figure,
              options: FIGURES,
              put: (figure) => put(feet.with(which, { ...foot, figure: figure as Foot['figure'] }), `figure-${which}`),
            })}
            ${
              foot.figure === 'percentile'
                ? labelled({
                    label: 'Share',
                    value: foot.share ?? '',
                    placeholder: USUAL_SHARE,
                    put: (share) => put(feet.with(which, withText(foot, 'share', share)), `share-${which}`),
                  })
                : nothing
            }
            ${this.formula(
              'of the rows where',
              foot.where ?? '',
              shown?.[which]?.diagnostics ?? [],
              (where) => put(feet.with(which, withText(foot, 'where', where)), `where-${which}`),
              'where',
            )}
            <button type="button" class="word" @click=${() => put(feet.toSpliced(which, 1), `foot-${++acts}`)}>Remove<span class="unseen"> ${FOOTER_LABELS[foot.figure]}</span></button>
          </div>
        `,
      )}
      ${
        feet.length < MOST_FEET
          ? html`<button type="button" class="word" @click=${() => put([...feet, { figure: 'sum' }], `foot-${++acts}`)}>A figure under it</button>`
          : nothing
      }
    `
  }

  override render(): TemplateResult {
    const { cell, opened } = this
    return html`
      <ol aria-label="Columns">
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
                <span class="label"><span class="unseen">Column: </span>${columnLabel(column)}</span>
                <span class="mono">${this.written(column)}</span>
              </button>
              ${opened === at ? this.fields(column, at) : nothing}
            </li>
          `,
        )}
      </ol>
      ${
        cell.columns.length < MAX_COLUMNS
          ? html`<button type="button" class="press add" @click=${this.add}>Add a column</button>`
          : nothing
      }
      <p class="small quiet">Rows are typed, or taken in from a table, under Fill in.</p>
    `
  }
}

export const form = (form: Form, cell: TableCell): TemplateResult => html`
  ${head(form, cell, false)}
  <table-form class="all" .form=${form} .cell=${cell}></table-form>
`
