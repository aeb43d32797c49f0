import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import '../../cells/fields/formula-field.ts'
import type { FormulaEvent, FormulaField, FormulaLeftEvent } from '../../cells/fields/formula-field.ts'
import { requestChange } from '../../cells/shared/cell-view.ts'
import { shared } from '../../cells/style/styles.ts'
import { readEntry } from '../../worksheet/clipping/lines.ts'
import { type Cell, fitted } from '../../worksheet/index.ts'
import { cellId } from '../common/additions.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { buildWords as words } from './words.ts'

/** A field for a cell typed as one line: `border = 10 mm`, `scale = sensor.width / page`, `? fits: page < 1 m | Too wide.` */
@customElement('line-entry')
export class LineEntry extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
        padding-block: 0.7rem;
        max-inline-size: 44rem;
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  /** The cell below which a line goes; without one, at the end. */
  @property() below: string | undefined
  @state() private text = ''
  @state() private said = ''
  @query('formula-field') private field!: FormulaField

  override focus(): void {
    this.field.focus()
  }

  /** Adds the cell of a line, under a free name; gives why it cannot be. */
  private add(typed: Cell): string | undefined {
    const { cells } = this.open.sheet
    const [cell] = fitted([typed], cells, cellId)
    if (!cell) return words.hasFunction
    const above = this.below === undefined ? -1 : cells.findIndex(({ id }) => id === this.below)
    const refused = requestChange(this, { do: 'add', cell, at: above < 0 ? cells.length : above + 1 })
    if (refused === undefined) this.dispatchEvent(new CustomEvent('entry-added', { detail: cell.id }))
    return refused
  }

  private readonly left = (event: FormulaLeftEvent): void => {
    event.stopPropagation()
    if (event.detail === 'escaped' || this.text.trim() === '') {
      this.dispatchEvent(new CustomEvent('entry-left'))
      return
    }
    const read = readEntry(this.text)
    const refused = typeof read === 'string' ? read : this.add(read)
    this.said = refused === undefined ? '' : words.notAdded(refused)
    if (refused === undefined) this.text = ''
  }

  override render(): TemplateResult {
    return html`
      <formula-field
        label=${words.typeACell}
        draft
        .value=${this.text}
        .scope=${() => this.open.sheet.engine.scope()}
        .called=${this.open.called}
        .isFormula=${isFormula}
        @formula-typed=${(event: FormulaEvent) => {
          this.text = event.detail
          this.said = ''
        }}
        @formula-left=${this.left}
      ></formula-field>
      <p class="small quiet">${words.typeACellAs}</p>
      ${this.said ? html`<p class="small" role="alert">${this.said}</p>` : nothing}
    `
  }
}

/** Whether a line is in its formula: behind its name, and not in what a check says. */
const isFormula = (before: string): boolean =>
  before.startsWith('?') ? /^\?[^:]*:[^|]*$/.test(before) : /^(?:[^|]*\|)?[^|=]*=[^|]*$|^[^=|#!>]*$/.test(before)
