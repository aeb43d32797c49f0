import { html, nothing, type TemplateResult } from 'lit'
import { labelled, selected } from '../fields/labelled.ts'
import type { TableState } from './table-rows.ts'
import { tableWords } from './words.ts'

/** Fewer rows than this are seen at a glance. */
const FEW_ROWS = 3

interface Tools {
  readonly filter: string
  readonly setFilter: (filter: string) => void
  /** Groups by the column of a name; by none where it is empty. */
  readonly group: (name: string) => void
}

/** Which rows are shown, and by which column they are totalled. */
export function tableTools(
  { cell, labels, shown }: TableState,
  { filter, setFilter, group }: Tools,
): TemplateResult | typeof nothing {
  if (cell.rows.length < FEW_ROWS && filter === '' && cell.group === undefined) return nothing
  return html`
    <div class="tools">
      ${labelled({ label: tableWords.filter, value: filter, placeholder: tableWords.filterExample, put: setFilter })}
      ${selected({
        label: tableWords.groupBy,
        value: cell.group ?? '',
        options: [
          ['', tableWords.noGroups],
          ...cell.columns.map(({ name }, at) => [name, labels[at] as string] as const),
        ],
        put: group,
      })}
      ${shown ? html`<span class="small quiet" role="status">${tableWords.filtered(shown.length, cell.rows.length)}</span>` : nothing}
    </div>
  `
}
