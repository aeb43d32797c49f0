import { html, nothing, type TemplateResult } from 'lit'
import { problem } from '../../language/index.ts'
import type { TableCell } from '../../worksheet/index.ts'
import { openedWords } from '../opened/words.ts'
import type { WideView } from '../shared/cell-view.ts'
import { errorMessage } from '../shared/error-message.ts'
import type { RowAct } from './table-keys.ts'
import type { TableState } from './table-rows.ts'
import { tableWords } from './words.ts'

/** What is wrong with the text of a field, and what might be written instead. */
export function fieldError(
  { cell, read }: TableState,
  row: number,
  column: number,
  write: (text: string) => void,
): TemplateResult | typeof nothing {
  const fields = cell.rows[row]
  const found = fields && read(fields).problems.find((one) => one.column === column && !one.empty)
  if (!fields || !found) return nothing
  const text = fields[column] ?? ''
  const { message, from, to, fix } = found
  const fixes = fix === undefined ? [] : [{ label: tableWords.write(fix), from: 0, to: text.length, insert: fix }]
  return html`<div id="problem" class="said">
    ${errorMessage(text, [problem(tableWords.inRow(row + 1, message), from, to, fixes)], write)}
  </div>`
}

/** What can be done with the present row. */
export function rowActs(
  { cell }: TableState,
  row: number,
  run: (act: RowAct) => void,
): TemplateResult | typeof nothing {
  if (cell.rows.length === 0) return nothing
  const word = (act: RowAct, text: string, isOff = false): TemplateResult =>
    html`<button type="button" class="word" aria-disabled=${isOff} @click=${() => !isOff && run(act)}>${text}<span class="unseen">${tableWords.ofRow(row + 1)}</span></button>`
  return html`
    <div class="row-acts" role="group" aria-label=${tableWords.row(row + 1)}>
      <span>${tableWords.row(row + 1)}</span>
      ${word('below', openedWords.add)} ${word('up', openedWords.up, row === 0)}
      ${word('down', openedWords.down, row === cell.rows.length - 1)} ${word('fill', tableWords.fillDown)}
      ${word('remove', openedWords.remove)}
    </div>
  `
}

/** Why a table's formulas do not compute. */
export function tableErrors({ outcome, called }: WideView<TableCell>): TemplateResult[] | typeof nothing {
  if (outcome?.state === 'error') return errorMessage('', outcome.diagnostics, () => {})
  if (outcome?.state === 'waiting' && outcome.on.length > 0)
    return [html`<p class="small quiet">${tableWords.formulasNeed(outcome.on.map(called))}</p>`]
  return nothing
}
