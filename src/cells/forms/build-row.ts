import { css, html, nothing, svg, type TemplateResult } from 'lit'
import { isHeading, isNamed, type Outcome } from '../../worksheet/index.ts'
import { kindOf } from '../../worksheet/kinds/index.ts'
import { figureOf, isSpread, missingReason } from '../basic/result-cell.ts'
import { type CellView, labelOf } from '../shared/cell-view.ts'
import { checkSign, STATE_LABELS, signStyle } from '../shared/check-sign.ts'
import { formWords } from './words.ts'

export const buildRowStyle = [
  signStyle,
  css`
    .row {
      grid-template-columns: 44px 3.9rem minmax(0, 1fr) var(--figure, 11rem) var(--unit, 3.4rem);
      border-block-end: 0;
      /* The sign of the grip is aligned with the text of the sheet. */
      margin-inline-start: -13px;
      column-gap: 0.4rem;
    }
    .row.plain {
      grid-template-columns: 44px 3.9rem minmax(0, 1fr);
    }
    .grip {
      display: grid;
      place-items: center;
      inline-size: 44px;
      block-size: 44px;
      padding: 0;
      border: 0;
      background: none;
      color: var(--quiet);
      font-size: 0.86rem;
      letter-spacing: -0.08em;
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
    .grip .sign {
      color: var(--ink);
    }
    .row > .grip {
      align-self: start;
    }
    .row > .kind {
      align-self: start;
      padding-block-start: 0.55rem;
    }
    .row > .kind:has(+ .what > :only-child) {
      padding-block-start: 0.85rem;
    }
    .row .figure {
      padding-inline-end: 0;
    }
    .result .figure {
      font-weight: 700;
    }
    .long-figure .figure {
      font-size: 0.86rem;
      font-weight: 400;
    }
    .call {
      display: block;
      inline-size: 100%;
      min-block-size: 1.9rem;
      padding: 0.45rem 0 0.15rem;
      border: 0;
      background: none;
      text-align: start;
      cursor: pointer;
      line-height: 1.25;
      overflow-wrap: anywhere;
    }
    .call:only-child {
      min-block-size: 44px;
      padding-block: 0.45rem;
    }
    .call:hover {
      text-decoration: underline;
      text-underline-offset: 0.25em;
    }
    .call.heading {
      font-size: 1.15rem;
      font-weight: 700;
    }
    .formula-text {
      display: block;
      inline-size: 100%;
      min-block-size: 1.7rem;
      padding: 0.1rem 0 0.4rem;
      border: 0;
      background: none;
      text-align: start;
      cursor: pointer;
      font-family: var(--mono);
      font-size: 0.86rem;
      line-height: 1.4;
      color: var(--quiet);
      overflow-wrap: anywhere;
    }
    button.formula-text:hover {
      color: var(--ink);
      text-decoration: underline;
      text-underline-offset: 0.25em;
    }
    .state {
      text-align: end;
    }
    .wrong {
      padding-block-end: 0.4rem;
    }
    @container (max-width: 34rem) {
      .row {
        grid-template-columns: 44px minmax(0, 1fr) auto auto;
        column-gap: 0.3rem;
      }
      .row.plain {
        grid-template-columns: 44px minmax(0, 1fr);
      }
      .row > .kind {
        display: none;
      }
      .row > .what,
      .row.spread > .figure {
        grid-column: auto;
        padding-block-start: 0;
      }
      .row > .what + * {
        grid-column: auto;
      }
      .row .figure {
        max-inline-size: 9rem;
      }
    }
  `,
]

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
  >${picking ? pickSign(picked) : '↑↓'}</button>
`

const pickSign = (picked: boolean): TemplateResult => html`
  <svg class="sign" viewBox="0 0 18 18" aria-hidden="true">
    <rect x="1" y="1" width="16" height="16" />
    ${picked ? svg`<path d="M4 9.5 7.5 13.5 14.5 4.5" />` : nothing}
  </svg>
`

const bracketed = (unit: string | undefined): string => (unit ? ` [${unit}]` : '')

/** The definition of a cell: `name [unit] = formula`. */
function definition({ cell }: CellView): string | undefined {
  if (cell.kind === 'given') return `${cell.name}${bracketed(cell.unit)}`
  if (cell.kind === 'result') return `${cell.name}${bracketed(cell.unit)} = ${cell.formula}`
  return cell.kind === 'check' ? `${cell.name}: ${cell.condition}` : undefined
}

function present(view: CellView): TemplateResult | typeof nothing {
  const { cell, outcome } = view
  if (cell.kind === 'check' && outcome && 'message' in outcome)
    return html`<b class="state">${STATE_LABELS[outcome.state]}</b>${checkSign(outcome.state)}`
  if (cell.kind === 'given' && cell.entry && !['quantity', 'size', 'list'].includes(cell.entry))
    return html`<span class="state">${cell.value || '–'}</span>`
  if (cell.kind === 'given' || cell.kind === 'result') return figureOf(outcome as Outcome)
  return nothing
}

function heading({ cell }: CellView): string {
  if (cell.kind !== 'note') return ''
  return cell.role === 'heading' ? 'heading' : ''
}

/** The row of a cell in Build. */
export function buildRow(view: CellView, state: RowState, acts: Acts): TemplateResult {
  const { open } = state
  const { toggle, formula } = acts
  const { cell, outcome, called } = view
  const text = open ? undefined : definition(view)
  const plain = !isNamed(cell) || cell.kind === 'table'
  const values = cell.kind === 'given' || cell.kind === 'result' ? (outcome as Outcome) : undefined
  const why = values && missingReason(values, called)
  const wrong =
    !open && values?.state === 'error' && values.origin === undefined ? values.diagnostics[0]?.message : undefined
  const kind = isHeading(cell) ? formWords.section : kindOf(cell).title
  return html`
    <div class="row ${cell.kind} ${plain ? 'plain' : ''} ${values && isSpread(values) ? 'long-figure' : ''}">
      ${gripOf(labelOf(cell), state, acts)}
      <span class="kind small quiet">${kind}</span>
      <div class="what">
        <button type="button" class="call ${heading(view)}" aria-expanded=${open} @click=${toggle}>
          <span class="unseen">${kind}: </span>${labelOf(cell)}
        </button>
        ${
          text === undefined
            ? nothing
            : cell.kind === 'given'
              ? html`<span class="formula-text">${text}</span>`
              : html`<button type="button" class="formula-text" @click=${formula}>
                  <span class="unseen">${formWords.editFormula}</span>${text}
                </button>`
        }
        ${why ? html`<span class="small">${why}</span>` : nothing}
        ${wrong ? html`<p class="small wrong"><b>${formWords.error}</b> ${wrong}</p>` : nothing}
      </div>
      ${present(view)}
    </div>
  `
}
