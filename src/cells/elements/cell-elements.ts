import { html, type TemplateResult } from 'lit'
import type { Cell } from '../../worksheet/index.ts'
import { type ByKind, byKind } from '../../worksheet/kinds/index.ts'
import type { CellSignal } from '../shared/cell-view.ts'

type Element = (cell: Cell, view: CellSignal) => TemplateResult

/** An element whose script is fetched when a worksheet first has a cell of its kind. */
const fetched = (fetch: () => Promise<unknown>, element: Element): Element => {
  let isRequested = false
  return (cell, view) => {
    if (!isRequested) {
      isRequested = true
      fetch().catch(() => {
        // Asked for again with the next cell that is drawn.
        isRequested = false
      })
    }
    return element(cell, view)
  }
}

/** The element that shows a cell, by its kind. */
const ELEMENTS: ByKind<[CellSignal], TemplateResult> = {
  given: ({ id }, view) => html`<given-cell data-cell=${id} .view=${view}></given-cell>`,
  result: ({ id }, view) => html`<result-cell data-cell=${id} .view=${view}></result-cell>`,
  check: fetched(
    () => import('../checks/check-cell.ts'),
    ({ id }, view) => html`<check-cell data-cell=${id} .view=${view}></check-cell>`,
  ),
  note: ({ id }, view) => html`<note-cell data-cell=${id} .view=${view}></note-cell>`,
  drawing: ({ id }, view) => html`<drawing-cell data-cell=${id} .view=${view}></drawing-cell>`,
  steps: fetched(
    () => import('../steps/steps-cell.ts'),
    ({ id }, view) => html`<steps-cell data-cell=${id} .view=${view}></steps-cell>`,
  ),
  table: fetched(
    () => import('../table/table-cell.ts'),
    ({ id }, view) => html`<table-cell data-cell=${id} .view=${view}></table-cell>`,
  ),
  range: fetched(
    () => import('../range/range-cell.ts'),
    ({ id }, view) => html`<range-cell data-cell=${id} .view=${view}></range-cell>`,
  ),
  variants: fetched(
    () => import('../variants/variants-cell.ts'),
    ({ id }, view) => html`<variants-cell data-cell=${id} .view=${view}></variants-cell>`,
  ),
  run: fetched(
    () => import('../run/run-cell.ts'),
    ({ id }, view) => html`<run-cell data-cell=${id} .view=${view}></run-cell>`,
  ),
  frame: fetched(
    () => import('../frame/frame-cell.ts'),
    ({ id }, view) => html`<frame-cell data-cell=${id} .view=${view}></frame-cell>`,
  ),
  function: fetched(
    () => import('../function/function-cell.ts'),
    ({ id }, view) => html`<function-cell data-cell=${id} .view=${view}></function-cell>`,
  ),
}

/** The element that shows a cell, by its kind. */
export const cellElement = (cell: Cell, view: CellSignal): TemplateResult => byKind(ELEMENTS, cell, view)
