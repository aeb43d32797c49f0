import type { Node } from '../../src/drawings/canvas/tree.ts'
import { element, rounded3, toSvgText } from '../../src/drawings/canvas/tree.ts'

/** What is written, measured or pointed at: too fine for a figure two fingers wide. */
const FINE =
  /(^|\s)(dimension-|note-|label-|key|scale-bar|line-45|arc-45|arc|aim-arrow|datum|extension|tick|axis-number|reading-point|order-head|principal-plane)/

const PADDING = 3
const isText = ({ tag }: Node): boolean => tag === 'text' || tag === 'title' || tag === 'desc'
const classOf = ({ attributes }: Node): string => String(attributes.class ?? '')

/** The coordinates of a path, as pairs. */
function pointsOf({ attributes }: Node): [number, number][] {
  const numbers = String(attributes.d ?? attributes.points ?? '').match(/-?\d+(\.\d+)?/g) ?? []
  return numbers.flatMap((x, at) => (at % 2 === 0 ? [[Number(x), Number(numbers[at + 1])] as [number, number]] : []))
}

const topOf = (node: Node): number => Math.min(...pointsOf(node).map(([, y]) => y))

/** Where the second view of a set-up begins: the first alone says what it is. */
function secondView(nodes: readonly Node[]): number {
  const titles = nodes.filter((node) => classOf(node).includes('view-title')).map(({ attributes }) => attributes.y)
  return titles.length > 1 ? (Number(titles[1]) || 0) - Number(titles[0]) : Number.POSITIVE_INFINITY
}

const flat = (node: Node): Node[] =>
  node.children.flatMap((child) => (typeof child === 'string' ? [] : [child, ...flat(child)]))

/** A drawing as a small figure: its lines alone, cut to what they take. Undefined where none is left. */
export function bareFigure(drawn: Node): string | undefined {
  const nodes = flat(drawn)
  const end = secondView(nodes)
  const lines = nodes.filter(
    (node) => node.tag === 'path' && !isText(node) && !FINE.test(classOf(node)) && topOf(node) < end,
  )
  const points = lines.flatMap(pointsOf)
  if (points.length === 0) return undefined
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  const [left, top] = [Math.min(...xs) - PADDING, Math.min(...ys) - PADDING]
  const [width, height] = [Math.max(...xs) - left + PADDING, Math.max(...ys) - top + PADDING]
  const coarse = lines.map((node) => element('path', { ...withoutClass(node), d: rounded(String(node.attributes.d)) }))
  const box = [left, top, width, height].map((one) => Math.round(one * 10) / 10).join(' ')
  // With an explicit size, or a browser would lay the picture out as a square.
  return toSvgText(
    element('svg', { viewBox: box, width: rounded3(width), height: rounded3(height), color: '#000' }, ...coarse),
  )
}

function withoutClass({ attributes }: Node): Record<string, string | number> {
  const { class: _, d: __, ...rest } = attributes
  return rest
}

/** A tenth of a px is finer than it will be seen. */
const rounded = (d: string): string => d.replace(/-?\d+\.\d+/g, (text) => `${Math.round(Number(text) * 10) / 10 + 0}`)
