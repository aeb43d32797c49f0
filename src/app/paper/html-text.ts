import type { Node } from '../../drawings/canvas/tree.ts'

const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }
/** Characters that are not allowed in HTML, and those that change the direction of the text after them. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069\ufffe\uffff]/g

/** A lone surrogate, which UTF-8 cannot encode. */
const LONE = /\p{Surrogate}/gu

/** A text as HTML shows it, its special characters escaped. */
export const escaped = (text: string): string =>
  text
    .replace(LONE, '')
    .replace(FORBIDDEN, '')
    .replace(/[&<>"']/g, (sign) => SIGNS[sign] as string)

/** An element as text. Every text and every value is escaped; tags and names of attributes are the program's own. */
export function htmlText(node: Node | string): string {
  if (typeof node === 'string') return escaped(node)
  const attributes = Object.entries(node.attributes).map(([name, value]) => ` ${name}="${escaped(String(value))}"`)
  return `<${node.tag}${attributes.join('')}>${node.children.map(htmlText).join('')}</${node.tag}>`
}
