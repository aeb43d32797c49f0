import { css, html, svg, type TemplateResult } from 'lit'
import type { CheckOutcome } from '../../worksheet/index.ts'

export type CheckState = CheckOutcome['state']

export const signStyle = css`
  .sign {
    flex: none;
    inline-size: var(--sign, 16px);
    block-size: var(--sign, 16px);
    fill: currentcolor;
    stroke: none;
  }
`

/** The parts of a sign in a box of 16 by 16: filled shapes, and lines of a width. */
export interface SignPart {
  readonly d: string
  /** The width of the line; a filled shape has none. */
  readonly line?: number
}

/** A solid diamond with “!” cut out, one with its lower half solid, three blocks, a stroke, a cross. */
export const SIGNS: Readonly<Record<CheckState, readonly SignPart[]>> = {
  fail: [{ d: 'M8 0 16 8 8 16 0 8ZM6.85 3.4V9.2H9.15V3.4ZM6.85 10.6V12.9H9.15V10.6Z' }],
  marginal: [{ d: 'M8 1.2 14.8 8 8 14.8 1.2 8Z', line: 1.7 }, { d: 'M1.2 8H14.8L8 14.8Z' }],
  waiting: [{ d: 'M.9 6.3h3.4v3.4H.9ZM6.3 6.3h3.4v3.4H6.3ZM11.7 6.3h3.4v3.4h-3.4Z' }],
  pass: [{ d: 'M1.5 8.8 5.8 13 14.5 3', line: 2.2 }],
  error: [{ d: 'M2.5 2.5 13.5 13.5M13.5 2.5 2.5 13.5', line: 2.2 }],
}

const DIAMOND = { d: 'M8 1 15 8 8 15 1 8Z', line: 1.5 }
/** The diamonds of checks that are computed from an example's figures: dashed round what is solid in them. */
const RESTING: Partial<Record<CheckState, readonly SignPart[]>> = {
  fail: [DIAMOND, { d: 'M6.9 3.8V9H9.1V3.8ZM6.9 10.3V12.5H9.1V10.3Z' }],
  marginal: [DIAMOND, { d: 'M3.6 8.4H12.4L8 12.8Z' }],
}

/** The sign of a state, without words: its label is always beside it. Dashed while the check rests on an example. */
export const checkSign = (state: CheckState, rests = false): TemplateResult => html`
  <svg class="sign" viewBox="0 0 16 16" aria-hidden="true">
    ${((rests && RESTING[state]) || SIGNS[state]).map(({ d, line }) =>
      line
        ? svg`<path d=${d} fill="none" stroke="currentcolor" stroke-width=${line} stroke-dasharray=${rests ? '2.4 1.4' : 'none'} />`
        : svg`<path d=${d} fill-rule="evenodd" />`,
    )}
  </svg>
`
