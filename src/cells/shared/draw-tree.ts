import type { Node as Drawn } from '../../drawings/canvas/tree.ts'

const SVG = 'http://www.w3.org/2000/svg'

/** Builds the DOM of a drawing. Texts become text nodes and are never parsed as markup. */
export function drawTree(drawn: Drawn): SVGElement {
  const made = document.createElementNS(SVG, drawn.tag)
  for (const [name, value] of Object.entries(drawn.attributes)) made.setAttribute(name, String(value))
  for (const child of drawn.children) made.append(typeof child === 'string' ? child : drawTree(child))
  return made
}
