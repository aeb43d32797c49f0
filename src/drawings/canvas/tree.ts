import type { Point } from './geometry.ts'
import type { Pixels } from './measures.ts'

/** An SVG element as plain data: the page renders it, a file serializes it and a test reads it. */
export interface Node {
  readonly tag: string
  readonly attributes: Readonly<Record<string, string | number>>
  readonly children: readonly (Node | string)[]
}

/** A table of texts: the column heads, then the rows. */
export interface Table {
  readonly head: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

/** A lamp that can be dragged in the drawing. */
export interface Handle {
  /** The lamp's place in the list of lamps, counted from 1. */
  readonly lamp: number
  /** The view that shows this handle: elevation or plan. A lamp has one handle in each. */
  readonly view: string
  /** Position in pixels of the view box. */
  readonly at: Point
  readonly pxPerMetre: number
  /** Converts a point of the view box to the coordinates this view shows, in metres. */
  readonly place: (at: Point) => Readonly<Partial<Record<'x' | 'y' | 'z', number>>>
  /** The lamp's position in words, for screen readers. */
  readonly description: string
}

/** A drawing, with the same content as text. */
export interface Drawing {
  readonly node: Node
  readonly title: string
  /** All figures of the drawing in sentences, for screen readers and for print. */
  readonly description: string
  /** Figures that read better as a table, in addition to the sentences. */
  readonly table?: Table
  /** One sentence for each thing that is not drawn, with the reason. */
  readonly omissions: readonly string[]
  /** Where the figures drawn contradict each other, if they do. */
  readonly cautions?: readonly string[]
  /** The lamps that can be dragged, if any. */
  readonly handles?: readonly Handle[]
  /** Size of the view box. */
  readonly width: Pixels
  readonly height: Pixels
}

/** Builds an element; numeric attributes are rounded to a thousandth of a pixel. */
export function element(
  tag: string,
  attributes: Readonly<Record<string, string | number>>,
  ...children: readonly (Node | string)[]
): Node {
  const rounded = Object.entries(attributes).map(([name, value]) => [
    name,
    typeof value === 'number' ? rounded3(value) : value,
  ])
  return { tag, attributes: Object.fromEntries(rounded), children }
}

/** A coordinate to three decimals, never `-0`. */
export const rounded3 = (value: number): number => Math.round(value * 1000) / 1000 + 0

const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
/** Characters that are not allowed in XML 1.0, even as character references. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: the pattern must match control characters
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g

const escaped = (text: string): string =>
  text.replace(FORBIDDEN, '').replace(/[&<>"]/g, (sign) => SIGNS[sign] as string)

function serialized(node: Node | string): string {
  if (typeof node === 'string') return escaped(node)
  const attributes = Object.entries(node.attributes).map(([name, value]) => ` ${name}="${escaped(String(value))}"`)
  const inner = node.children.map(serialized).join('')
  return inner === ''
    ? `<${node.tag}${attributes.join('')}/>`
    : `<${node.tag}${attributes.join('')}>${inner}</${node.tag}>`
}

/** The drawing as a complete SVG file: black on a transparent ground, in a common sans-serif font. */
export function toSvgText(node: Node): string {
  const file = {
    ...node,
    attributes: {
      xmlns: 'http://www.w3.org/2000/svg',
      'font-family': "'Atkinson Hyperlegible Next', Arial, Helvetica, sans-serif",
      ...node.attributes,
    },
  }
  return `<?xml version="1.0" encoding="UTF-8"?>\n${serialized(file)}\n`
}
