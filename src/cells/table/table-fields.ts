import { html, type TemplateResult } from 'lit'
import { live } from 'lit/directives/live.js'
import { showValue, type Type, type Value } from '../../language/index.ts'
import type { DisplayUnit } from '../../units/index.ts'
import type { Column } from '../../worksheet/index.ts'
import type { FieldError } from '../../worksheet/table/read-table.ts'
import { tableWords } from './words.ts'

export interface FieldParts {
  readonly column: Column
  /** The heading of the column. */
  readonly label: string
  /** Row and column, counted from 0. */
  readonly row: number
  readonly at: number
  readonly text: string
  readonly problem: FieldError | undefined
  /** Whether the field is in the present row: Tab stops only there. */
  readonly inActiveRow: boolean
  /** The id of its error message, if any. */
  readonly described: string
  readonly put: (text: string) => void
}

const TICKS = /^(yes|true|x|✓|✔|1|no|false|0|-|–|)$/i
const IS_TICKED = /^(yes|true|x|✓|✔|1)$/i

/** Whether a column takes quantities, so that its figures are aligned. */
export const isNumeric = ({ entry }: Column): boolean => entry === undefined || entry === 'quantity'

/** The class that gives a column its width. */
export function widthOf(column: Column, hasFormula: boolean): string {
  if (hasFormula) return 'figure-wide'
  if (column.entry === 'date' || column.entry === 'time' || column.entry === 'date and time') return 'moment-wide'
  return `${column.entry ?? 'quantity'}-wide`
}

/** The field of a row and column, by the entry of the column. */
export function tableField(parts: FieldParts): TemplateResult {
  const { column, label, row, at, text, problem, inActiveRow, described, put } = parts
  const called = tableWords.fieldOf(label, row + 1)
  const stop = inActiveRow ? 0 : -1
  const isBad = problem !== undefined && !problem.empty
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
      class="f ${problem?.empty ? 'required' : ''}"
      data-at=${place}
      tabindex=${stop}
      aria-label=${called}
      aria-invalid=${isBad}
      aria-describedby=${described}
      @change=${(event: Event) => put((event.target as HTMLSelectElement).value)}
    >
      ${[...stray, ...((column.may_be_empty || column.default) && text !== '' ? [''] : []), ...options].map(
        (option) =>
          html`<option value=${option} .selected=${live(option === text)}>${option || column.default || '–'}</option>`,
      )}
    </select>`
  }
  return html`<input
    class="f ${isNumeric(column) ? 'end' : ''} ${problem?.empty ? 'required' : ''}"
    type="text"
    autocomplete="off"
    autocapitalize="off"
    spellcheck=${column.entry === 'text'}
    data-at=${place}
    tabindex=${stop}
    aria-label=${called}
    aria-invalid=${isBad}
    aria-describedby=${described}
    placeholder=${column.default ?? ''}
    .value=${live(text)}
    @input=${(event: Event) => put((event.target as HTMLInputElement).value)}
  >`
}

/** The computed figure of a row; without its unit if the heading shows it. */
export function computedText(value: Value | undefined, type: Type | undefined, unit: DisplayUnit | undefined): string {
  if (value === undefined || !type) return ''
  const shown = showValue(value, type, unit)
  return unit && type.kind === 'number' ? shown.figure : shown.text
}
