import { css, html, nothing, type TemplateResult } from 'lit'
import type { Shown } from '../../units/index.ts'

/** A longer figure, such as a list or a record, is set as text. */
const LONGEST_FIGURE = 18
/** Widths of bold characters in em, measured in the typeface shipped with the app and rounded up. */
const NARROW = new Map([...'.,:;|i\u202f '].map((sign) => [sign, 0.28]))
const WIDE = new Map([...'mMW%±×'].map((sign) => [sign, 0.9]))
/** The size of a unit relative to its figure. */
const UNIT_SIZE = 0.36

const emOf = (text: string): number =>
  [...text].reduce((sum, sign) => sum + (NARROW.get(sign) ?? WIDE.get(sign) ?? (/[a-z/]/.test(sign) ? 0.6 : 0.67)), 0)

export const bigFigureStyle = css`
  /* As wide as there is room; a figure too wide for it is set smaller. */
  .room {
    min-inline-size: 0;
    container-type: inline-size;
  }
  .big {
    display: inline-block;
    font-size: min(var(--big, 5.6rem), calc(98cqi / var(--em)));
    line-height: 1.1429;
    font-weight: 700;
    font-variant-numeric: normal;
    letter-spacing: -0.01em;
    white-space: nowrap;
  }
  .big .unit {
    padding-inline-start: 0.35em;
    font-size: ${UNIT_SIZE}em;
    font-weight: 400;
    letter-spacing: 0;
    color: var(--quiet);
  }
  /* Drawn as in Fill in while it is an example's, or is computed from such. */
  .big.rests {
    font-weight: 400;
    text-decoration: underline;
    text-decoration-style: dashed;
    text-decoration-thickness: max(2px, 0.03em);
    text-underline-offset: 0.12em;
  }
  .big.rests .unit {
    display: inline-block;
  }
  .big.long {
    font-size: min(var(--big, 5.6rem), 1.8667rem);
    line-height: 1.3;
    white-space: normal;
    overflow-wrap: anywhere;
  }
`

/** A figure to be read from 1 m, with its unit; a dash where it is not known. `rests` where it is an example's. */
export function bigFigure(setting: Pick<Shown, 'figure' | 'unit'> | undefined, rests = false): TemplateResult {
  if (!setting) return room(1, html`<span class="big quiet" aria-hidden="true">–</span>`)
  const { figure, unit } = setting
  if (figure.length > LONGEST_FIGURE)
    return room(1, html`<span class="big long ${rests ? 'rests' : ''}">${figure} ${unit}</span>`)
  const em = emOf(figure) + (unit === '' ? 0 : UNIT_SIZE * (emOf(unit) + 0.6))
  return room(
    em,
    html`<span class="big ${rests ? 'rests' : ''}">${figure}${unit === '' ? nothing : html`<span class="unit">${unit}</span>`}</span>`,
  )
}

/** The style is set as a property, since the content security policy rejects style attributes. */
const room = (em: number, figure: TemplateResult): TemplateResult =>
  html`<div class="room" .style=${`--em: ${em.toFixed(2)}`}>${figure}</div>`
