import { css, html, type TemplateResult } from 'lit'

export const unbrokenFigures = css`
  .unbroken {
    white-space: nowrap;
  }
`

/** A figure, a space, and what may be its unit: a sign, or a few letters. */
const WITH_UNIT = /(\d[\d.,:/\u202f]* (?:[%‰°]|[A-Za-zµ/]{1,5}[²³]?(?![A-Za-z])))/

/** A sentence in which no line ends between a figure and its unit. */
export const withUnbrokenFigures = (text: string): (string | TemplateResult)[] =>
  text.split(WITH_UNIT).map((part, at) => (at % 2 === 1 ? html`<span class="unbroken">${part}</span>` : part))
