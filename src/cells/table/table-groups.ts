import { html, nothing, type TemplateResult } from 'lit'
import type { RowGroup } from '../../worksheet/table/footer.ts'
import { rowCountText } from '../../worksheet/table/row-status.ts'
import type { TableState } from './table-rows.ts'
import { tableWords } from './words.ts'

const figures = (group: RowGroup, at: number): TemplateResult | string =>
  html`${(group.feet[at] ?? []).map(
    (one) => html`<span class="total"><span class="small quiet">${one.words}</span> <b>${one.shown ?? '–'}</b></span> `,
  )}`

/** The totals of each group of rows; nothing where the table is not grouped. */
export function tableGroups({ cell, groups, labels }: TableState): TemplateResult | typeof nothing {
  const by = cell.columns.findIndex(({ name }) => name === cell.group)
  if (by < 0 || groups.length === 0) return nothing
  const columns = cell.columns.flatMap((_, at) => (groups.some(({ feet }) => (feet[at] ?? []).length > 0) ? [at] : []))
  return html`
    <div class="groups" role="region" tabindex="0" aria-label=${tableWords.totalsBy(labels[by] as string)}>
      <table>
        <thead>
          <tr>
            <th scope="col">${labels[by]}</th>
            <th scope="col">${tableWords.rows}</th>
            ${columns.map((at) => html`<th scope="col">${labels[at]}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${groups.map(
            (group) => html`<tr>
              <th scope="row">${group.label || tableWords.empty}</th>
              <td>${rowCountText(group.count, 0).figure}</td>
              ${columns.map((at) => html`<td>${figures(group, at)}</td>`)}
            </tr>`,
          )}
        </tbody>
      </table>
    </div>
  `
}
