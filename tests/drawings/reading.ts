import { type Box, crosses, grown, overlap, type Point, type Segment } from '../../src/drawings/canvas/geometry.ts'
import { letteringBox } from '../../src/drawings/canvas/lettering.ts'
import type { Drawing, Node } from '../../src/drawings/canvas/tree.ts'

/** Every node of a drawing, the root first. */
export const nodes = (node: Node): readonly Node[] => [
  node,
  ...node.children.flatMap((child) => (typeof child === 'string' ? [] : nodes(child))),
]

const classes = (node: Node): readonly string[] => String(node.attributes.class ?? '').split(' ')

/** The lines and shapes of a path, each a run of points. */
function runs(node: Node): readonly (readonly Point[])[] {
  return String(node.attributes.d)
    .split('M')
    .slice(1)
    .map((run) => {
      const numbers = (run.match(/-?[\d.]+(e-?\d+)?/g) ?? []).map(Number)
      const points = Array.from({ length: numbers.length / 2 }, (_, at) => ({
        x: numbers[2 * at] as number,
        y: numbers[2 * at + 1] as number,
      }))
      return run.includes('Z') ? [...points, points[0] as Point] : points
    })
}

/** The runs of points of all paths that have every one of some classes. */
export const pathsOf = (drawing: Drawing, ...expected: readonly string[]): readonly (readonly Point[])[] =>
  nodes(drawing.node)
    .filter((node) => node.tag === 'path' && expected.every((one) => classes(node).includes(one)))
    .flatMap(runs)

/** Every straight stroke drawn, the hatching too. */
const strokes = (drawing: Drawing): readonly Segment[] =>
  pathsOf(drawing).flatMap((run) => run.slice(1).map((to, at) => ({ from: run[at] as Point, to })))

export interface Written {
  readonly text: string
  readonly as: readonly string[]
  readonly box: Box
}

/** Every text with the box it fills. */
export const texts = (drawing: Drawing): readonly Written[] =>
  nodes(drawing.node)
    .filter((node) => node.tag === 'text')
    .map((node) => {
      const text = node.children.join('')
      return {
        text,
        as: classes(node),
        box: letteringBox({
          text,
          at: { x: node.attributes.x as number, y: node.attributes.y as number },
          anchor: node.attributes['text-anchor'] as 'start' | 'middle' | 'end',
          upright: node.attributes.transform !== undefined,
        }),
      }
    })

/** What is wrong with where the texts stand: over one another, over a line, outside. */
export function clashes(drawing: Drawing): readonly string[] {
  const written = texts(drawing)
  const lines = strokes(drawing)
  const paper = { left: 0, top: 0, right: drawing.width, bottom: drawing.height }
  return written.flatMap(({ text, box }, at) => [
    ...written.slice(at + 1).flatMap((other) => (overlap(box, other.box) ? [`${text} over ${other.text}`] : [])),
    ...(lines.some((line) => crosses(line, grown(box, -0.2))) ? [`${text} over a line`] : []),
    ...(box.left < paper.left || box.right > paper.right || box.top < paper.top || box.bottom > paper.bottom
      ? [`${text} outside`]
      : []),
  ])
}
