import type { Point } from './geometry.ts'

/** An element of a drawing: plain data, so that a page, a file and a test can each make of it what they need. */
export interface Node {
  readonly tag: string
  readonly attributes: Readonly<Record<string, string | number>>
  readonly children: readonly (Node | string)[]
}

/** A head over each column, then the rows. */
export interface Table {
  readonly head: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

/** A lamp of the drawing that can be taken hold of. */
export interface Handle {
  /** Its place in the list of lamps, from 1. */
  readonly lamp: number
  /** The view it is seen in: a lamp has a handle in each. */
  readonly view: string
  /** In px of the view box. */
  readonly at: Point
  readonly pxPerMetre: number
  /** Where in space, as far as this view shows it, a place of the drawing is: metres. */
  readonly place: (at: Point) => Readonly<Partial<Record<'x' | 'y' | 'z', number>>>
  /** Where the lamp stands, in words. */
  readonly description: string
}

/** A drawing with its words. */
export interface Drawing {
  readonly node: Node
  readonly title: string
  /** The same figures in sentences, for those who do not see it and for print. */
  readonly description: string
  /** Figures that belong in rows and columns, beside the sentences. */
  readonly table?: Table
  /** What could not be drawn, each with why. */
  readonly omissions: readonly string[]
  /** What can be dragged, where anything can. */
  readonly handles?: readonly Handle[]
  /** Of the view box, in px. */
  readonly width: number
  readonly height: number
}

/** Builds a node; numbers are kept to a thousandth of a pixel. */
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

export const rounded3 = (value: number): number => Math.round(value * 1000) / 1000 + 0

const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
/** Characters no XML file may hold, even escaped. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
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

/** The drawing as an SVG file that stands alone: black on nothing, in a common sans-serif. */
export function toSvgText(node: Node): string {
  const standing = {
    ...node,
    attributes: {
      xmlns: 'http://www.w3.org/2000/svg',
      'font-family': "'Atkinson Hyperlegible Next', Arial, Helvetica, sans-serif",
      ...node.attributes,
    },
  }
  return `<?xml version="1.0" encoding="UTF-8"?>\n${serialized(standing)}\n`
}
