import { css } from 'lit'
import type { Node as Drawn } from '../../drawings/canvas/tree.ts'

const SVG = 'http://www.w3.org/2000/svg'

/** A drawing as wide as its element. */
export const drawnStyle = css`
  .drawing {
    display: block;
    inline-size: 100%;
    block-size: auto;
    overflow: visible;
    font-family: var(--type);
    color: var(--ink);
  }
  .figure-text {
    font-variant-numeric: tabular-nums;
  }
`

/** Builds the DOM of a drawing. Texts become text nodes and are never parsed as markup. */
export function drawTree(drawn: Drawn): SVGElement {
  const made = document.createElementNS(SVG, drawn.tag)
  for (const [name, value] of Object.entries(drawn.attributes)) made.setAttribute(name, String(value))
  for (const child of drawn.children) made.append(typeof child === 'string' ? child : drawTree(child))
  return made
}
