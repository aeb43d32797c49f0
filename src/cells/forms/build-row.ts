import { css, html, nothing, svg, type TemplateResult } from 'lit'
import { asShown } from '../../units/index.ts'
import { isHeading, isNamed, type Outcome } from '../../worksheet/index.ts'
import { kindOf } from '../../worksheet/kinds/index.ts'
import { figureOf, isSpread, missingReason } from '../basic/result-cell.ts'
import { type CellView, labelOf } from '../shared/cell-view.ts'
import { checkSign, signStyle } from '../shared/check-sign.ts'
import { STATE_LABELS } from '../shared/words.ts'
import { formWords } from './words.ts'

export const buildRowStyle = [
  signStyle,
  css`
    /* One line a cell: grip, kind, label, name, formula, the figure now and its unit. */
    .row {
      grid-template-columns: var(--grip, 24px) 62px minmax(0, 256px) minmax(0, 152px) minmax(0, 1fr) minmax(0, 130px) 46px;
      column-gap: 10px;
      border-block-end: 0;
    }
    .row.plain {
      grid-template-columns: var(--grip, 24px) 62px minmax(0, 1fr) auto;
    }
    .grip {
      display: grid;
      place-items: center;
      inline-size: 24px;
      block-size: var(--row);
      padding: 0;
      border: 0;
      background: none;
      color: var(--quiet);
      cursor: grab;
      touch-action: none;
      user-select: none;
      -webkit-user-select: none;
      -webkit-touch-callout: none;
    }
    .grip:hover {
      color: var(--ink);
    }
    .grip:active {
      cursor: grabbing;
    }
    .grip .dots {
      inline-size: 8px;
      block-size: 16px;
      fill: currentcolor;
    }
    .grip .sign {
      color: var(--ink);
      fill: none;
      stroke: currentcolor;
      stroke-width: 2;
    }
    .row .figure {
      padding-inline-end: 0;
    }
    .row .unit {
      white-space: nowrap;
    }
    .result .figure {
      font-weight: 700;
    }
    .long-figure .figure {
      overflow: hidden;
      font-size: 0.86rem;
      font-weight: 400;
      text-overflow: ellipsis;
      white-space: nowrap;
    }
    .what {
      padding-block: 0;
    }
    .call {
      display: block;
      inline-size: 100%;
      min-block-size: var(--row);
      padding: 4px 0;
      border: 0;
      background: none;
      text-align: start;
      cursor: pointer;
      line-height: 1.25;
      overflow-wrap: anywhere;
    }
    .call:hover {
      text-decoration: underline;
      text-underline-offset: 0.25em;
    }
    .call.heading {
      font-size: 1.3333rem;
      font-weight: 700;
    }
    .name,
    .formula-text {
      overflow: hidden;
      font-family: var(--mono);
      font-size: 0.86rem;
      color: var(--quiet);
      text-overflow: ellipsis;
      white-space: nowrap;
    }
    .formula-text {
      display: block;
      min-inline-size: 0;
      inline-size: 100%;
      padding: 0;
      border: 0;
      background: none;
      text-align: start;
    }
    .formula-text.in-words {
      font-family: var(--type);
    }
    button.formula-text {
      min-block-size: var(--row);
      color: var(--ink);
      cursor: pointer;
    }
    button.formula-text:hover {
      text-decoration: underline;
      text-underline-offset: 0.25em;
    }
    .state {
      display: flex;
      gap: 6px;
      align-items: center;
      justify-content: flex-end;
      min-inline-size: 0;
      overflow: hidden;
      text-align: end;
      text-overflow: ellipsis;
      white-space: nowrap;
    }
    .under {
      grid-column: 3 / -1;
      padding-block-end: 4px;
    }
    @container (max-width: 60rem) {
      .row {
        grid-template-columns: var(--grip, 24px) 56px minmax(0, 1fr) minmax(0, 1.2fr) minmax(0, 110px) 46px;
      }
      .row > .name {
        display: none;
      }
    }
    /* A finger needs a wider grip. */
    @media (pointer: coarse) {
      .row,
      .row.plain {
        --grip: 44px;
      }
      .grip {
        inline-size: 44px;
      }
    }
    /* On a phone the formula is under the label. */
    @container (max-width: 34rem) {
      .row {
        grid-template-columns: var(--grip, 24px) minmax(0, 1fr) fit-content(9rem) auto;
        column-gap: 8px;
      }
      .row.plain {
        grid-template-columns: var(--grip, 24px) minmax(0, 1fr) auto;
      }
      .row > .kind {
        display: none;
      }
      .row > .formula-text {
        grid-row: 2;
        grid-column: 2 / -1;
        min-block-size: 26px;
      }
      .row > .formula-text:empty,
      .open .row > .formula-text {
        display: none;
      }
      .call {
        min-block-size: 40px;
      }
      .under {
        grid-column: 2 / -1;
      }
    }
  `,
]

/** Longer figures are small, and cut short where there is no room. */
const MOST_AS_FIGURE = 13

interface Acts {
  readonly toggle: () => void
  readonly formula: () => void
  readonly pick: () => void
  readonly grip: (event: PointerEvent) => void
}

/** The state of a row in Build. */
interface RowState {
  readonly open: boolean
  readonly picked: boolean
  readonly picking: boolean
}

/** The grip of a row: dragged to move it, pressed to select it. */
const gripOf = (label: string, { picked, picking }: RowState, { pick, grip }: Acts): TemplateResult => html`
  <button
    type="button"
    class="grip"
    aria-label=${formWords.select(label)}
    aria-pressed=${picked}
    title=${formWords.grip}
    @pointerdown=${grip}
    @click=${pick}
    @contextmenu=${(event: Event) => event.preventDefault()}
  >${picking ? pickSign(picked) : DOTS}</button>
`

const DOTS = html`
  <svg class="dots" viewBox="0 0 8 16" aria-hidden="true">
    ${[2, 8, 14].map((y) => svg`<circle cx="2" cy=${y} r="1.3" /><circle cx="6" cy=${y} r="1.3" />`)}
  </svg>
`

const pickSign = (picked: boolean): TemplateResult => html`
  <svg class="sign" viewBox="0 0 18 18" aria-hidden="true">
    <rect x="1" y="1" width="16" height="16" />
    ${picked ? svg`<path d="M4 9.5 7.5 13.5 14.5 4.5" />` : nothing}
  </svg>
`

/** The definition of a cell: its formula, its condition, or in words what is given or shown. */
export function definition({ cell }: Pick<CellView, 'cell'>): string {
  switch (cell.kind) {
    case 'result':
      return cell.formula
    case 'check':
      return cell.condition
    case 'given':
      return [
        formWords.entries[cell.entry ?? 'quantity'],
        cell.least ? formWords.atLeast(asShown(cell.least)) : '',
        cell.most ? formWords.atMost(asShown(cell.most)) : '',
      ]
        .filter(Boolean)
        .join(', ')
    case 'drawing':
      return formWords.figures(Object.keys(cell.from).length)
    case 'steps':
      return formWords.steps(cell.steps.length)
    case 'table':
      return formWords.rows(cell.rows.length)
    default:
      return ''
  }
}

function present(view: CellView): TemplateResult | typeof nothing {
  const { cell, outcome } = view
  if (cell.kind === 'check' && outcome && 'message' in outcome)
    return html`<b class="state">${checkSign(outcome.state)} ${STATE_LABELS[outcome.state]}</b><span></span>`
  if (cell.kind === 'given' && cell.entry && !['quantity', 'size', 'list'].includes(cell.entry))
    return html`<span class="state" title=${cell.value}>${cell.value || '–'}</span><span></span>`
  if (cell.kind !== 'given' && cell.kind !== 'result') return nothing
  const values = outcome as Outcome
  if (!isSpread(values)) return figureOf(values)
  const { figure, unit } = values.shown
  return html`<span class="figure" title=${figure}>${figure.replaceAll('_', ' ')}</span><span class="unit">${unit}</span>`
}

/** The row of a cell in Build. */
export function buildRow(view: CellView, state: RowState, acts: Acts): TemplateResult {
  const { open } = state
  const { toggle, formula } = acts
  const { cell, outcome, called } = view
  const text = open ? '' : definition(view)
  const plain = !isNamed(cell) || cell.kind === 'table'
  const values = cell.kind === 'given' || cell.kind === 'result' ? (outcome as Outcome) : undefined
  const why = values && missingReason(values, called)
  const wrong =
    !open && values?.state === 'error' && values.origin === undefined ? values.diagnostics[0]?.message : undefined
  const kind = isHeading(cell) ? formWords.section : kindOf(cell).title
  return html`
    <div class="row ${cell.kind} ${plain ? 'plain' : ''} ${values && isSpread(values) && values.shown.figure.length > MOST_AS_FIGURE ? 'long-figure' : ''}">
      ${gripOf(labelOf(cell), state, acts)}
      <span class="kind small quiet">${kind}</span>
      <div class="what">
        <button type="button" class="call ${isHeading(cell) ? 'heading' : ''}" aria-expanded=${open} @click=${toggle}>
          <span class="unseen">${kind}: </span>${labelOf(cell)}
        </button>
      </div>
      ${plain ? nothing : html`<span class="name" title=${'name' in cell ? cell.name : ''}>${'name' in cell ? cell.name : ''}</span>`}
      ${
        cell.kind === 'result' || cell.kind === 'check'
          ? html`<button type="button" class="formula-text" title=${text} @click=${formula}>
              <span class="unseen">${formWords.editFormula}</span>${text}
            </button>`
          : html`<span class="formula-text in-words" title=${text}>${text}</span>`
      }
      ${present(view)}
      ${why ? html`<span class="small under">${why}</span>` : nothing}
      ${wrong ? html`<p class="small under"><b>${formWords.error}</b> ${wrong}</p>` : nothing}
    </div>
  `
}
