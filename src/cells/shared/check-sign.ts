import { css, html, svg, type TemplateResult } from 'lit'
import type { CheckOutcome } from '../../worksheet/index.ts'

export type CheckState = CheckOutcome['state']

/** The first word of a check says its state; the shape says it again. */
export const STATE_LABELS: Readonly<Record<CheckState, string>> = {
  pass: 'Pass',
  marginal: 'Marginal',
  fail: 'Fail',
  waiting: 'Waiting',
  error: 'Cannot be judged',
}

export const signStyle = css`
  .sign {
    inline-size: var(--sign, 1.15rem);
    block-size: var(--sign, 1.15rem);
    fill: none;
    stroke: currentcolor;
    stroke-width: 2;
  }
  .sign .full {
    fill: currentcolor;
  }
`

const box = svg`<rect x="1" y="1" width="16" height="16" />`

const SHAPES: Readonly<Record<CheckState, TemplateResult<2>>> = {
  pass: svg`<rect class="full" x="1" y="1" width="16" height="16" />`,
  marginal: svg`${box}<path class="full" stroke="none" d="M1 1V17H17Z" />`,
  fail: svg`${box}<path d="M4.5 4.5 13.5 13.5M13.5 4.5 4.5 13.5" />`,
  waiting: svg`<rect x="1" y="1" width="16" height="16" stroke-dasharray="3.2 2.13" />`,
  error: svg`${box}<path d="M4.5 9H13.5" />`,
}

/** The small drawn square: filled, half, crossed, dashed, or barred. */
export const checkSign = (state: CheckState): TemplateResult =>
  html`<svg class="sign" viewBox="0 0 18 18" aria-hidden="true">${SHAPES[state]}</svg>`
