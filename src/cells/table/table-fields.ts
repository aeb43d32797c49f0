import { html, type TemplateResult } from 'lit'
import { live } from 'lit/directives/live.js'
import { showValue, type Type, type Value } from '../../language/index.ts'
import type { DisplayUnit } from '../../units/index.ts'
import type { Column } from '../../worksheet/index.ts'
import type { FieldError } from '../../worksheet/table/read-table.ts'

export interface FieldParts {
  readonly column: Column
  /** What a person calls the column. */
  readonly label: string
  /** Places, from 0. */
  readonly row: number
  readonly at: number
  readonly text: string
  readonly trouble: FieldError | undefined
  /** Tab stops at the row in hand alone. */
  readonly inHand: boolean
  /** The id of what describes it, where something does. */
  readonly described: string
  readonly put: (text: string) => void
}

const TICKS = /^(yes|true|x|✓|✔|1|no|false|0|-|–|)$/i
const IS_TICKED = /^(yes|true|x|✓|✔|1)$/i

export const isNumeric = ({ entry }: Column): boolean => entry === undefined || entry === 'quantity'

/** The class that gives a column its width. */
export function widthOf(column: Column, hasFormula: boolean): string {
  if (hasFormula) return 'figure'
  if (column.entry === 'date and time') return 'moment'
  return column.entry ?? 'quantity'
}

/** The field of one row under one column, by what the column takes. */
export function tableField(parts: FieldParts): TemplateResult {
  const { column, label, row, at, text, trouble, inHand, described, put } = parts
  const called = `${label}, row ${row + 1}`
  const stop = inHand ? 0 : -1
  const isBad = trouble !== undefined && !trouble.empty
  const place = `${row} ${at}`
  const plain = text.trim()
  if (column.entry === 'tick' && TICKS.test(plain))
    return html`<label class="f">
      <input
        type="checkbox"
        data-at=${place}
        tabindex=${stop}
        aria-label=${called}
        .checked=${live(IS_TICKED.test(plain))}
        @change=${(event: Event) => put((event.target as HTMLInputElement).checked ? 'yes' : '')}
      >
    </label>`
  if (column.entry === 'choice') {
    const options = column.options ?? []
    const stray = options.includes(text) ? [] : [text]
    return html`<select
      class="f ${trouble?.empty ? 'wanted' : ''}"
      data-at=${place}
      tabindex=${stop}
      aria-label=${called}
      aria-invalid=${isBad}
      aria-describedby=${described}
      .value=${live(text)}
      @change=${(event: Event) => put((event.target as HTMLSelectElement).value)}
    >
      ${[...stray, ...(column.may_be_empty && text !== '' ? [''] : []), ...options].map(
        (option) => html`<option value=${option} ?selected=${option === text}>${option || '–'}</option>`,
      )}
    </select>`
  }
  return html`<input
    class="f ${isNumeric(column) ? 'end' : ''} ${trouble?.empty ? 'wanted' : ''}"
    type="text"
    autocomplete="off"
    autocapitalize="off"
    spellcheck=${column.entry === 'text'}
    data-at=${place}
    tabindex=${stop}
    aria-label=${called}
    aria-invalid=${isBad}
    aria-describedby=${described}
    .value=${live(text)}
    @input=${(event: Event) => put((event.target as HTMLInputElement).value)}
  >`
}

/** A figure worked out for a row: the unit stands in the head where the column declares one. */
export function workedOut(value: Value | undefined, type: Type | undefined, unit: DisplayUnit | undefined): string {
  if (value === undefined || !type) return ''
  const shown = showValue(value, type, unit)
  return unit && type.kind === 'number' ? shown.figure : shown.text
}
