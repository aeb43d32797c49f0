import { html, type TemplateResult } from 'lit'
import { LATER_KIND_TEXT } from '../../worksheet/document/label.ts'
import { type CellSignal, labelOf, type WideCell, type WideView } from '../shared/cell-view.ts'

const FETCH: Readonly<Record<WideCell['kind'], () => Promise<unknown>>> = {
  steps: () => import('../steps/steps-cell.ts'),
  table: () => import('../table/table-cell.ts'),
  range: () => import('../range/range-cell.ts'),
  variants: () => import('../variants/variants-cell.ts'),
  run: () => import('../run/run-cell.ts'),
  frame: async () => {},
  function: async () => {},
}

/** A cell that takes the whole width. The element that shows it is fetched when a sheet first has one. */
export function wideCell(cell: WideCell, view: CellSignal<WideView>): TemplateResult {
  void FETCH[cell.kind]()
  switch (cell.kind) {
    case 'steps':
      return html`<steps-cell data-cell=${cell.id} tabindex="-1" .view=${view}></steps-cell>`
    case 'table':
      return html`<table-cell data-cell=${cell.id} tabindex="-1" .view=${view}></table-cell>`
    case 'range':
      return html`<range-cell data-cell=${cell.id} tabindex="-1" .view=${view}></range-cell>`
    case 'variants':
      return html`<variants-cell data-cell=${cell.id} tabindex="-1" .view=${view}></variants-cell>`
    case 'run':
      return html`<run-cell data-cell=${cell.id} tabindex="-1" .view=${view}></run-cell>`
    case 'frame':
    case 'function':
      return html`<p class="quiet" data-cell=${cell.id} tabindex="-1">${labelOf(cell)}: ${LATER_KIND_TEXT}</p>`
  }
}
