import { listText } from '../../units/plural.ts'
import { Canvas, type TextPlacement } from '../canvas/canvas.ts'
import { type Box, boxAround, corners, type Point, point } from '../canvas/geometry.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import { type Drawing, element, type Node } from '../canvas/tree.ts'
import { FRAME_DRAWING_WORDS as WORDS } from './words.ts'

/** An area as outlines in pixels of the picture, with its most important figure. */
export interface SketchedArea {
  readonly name: string
  readonly figure: string
  readonly outlines: readonly (readonly (readonly [number, number])[])[]
}

const PAD = 4
const NARROWEST = 240
const TALLEST = 1

/** Draws the outline of a picture with its areas to scale, over a small copy of it where there is one. */
export function drawAreas(
  size: { readonly width: number; readonly height: number },
  areas: readonly SketchedArea[],
  room: number,
  copy?: string,
): Drawing | undefined {
  if (!(size.width > 0 && size.height > 0)) return undefined
  const width = Math.max(NARROWEST, room)
  const scale = Math.min((width - 2 * PAD) / size.width, (width * TALLEST) / size.height)
  const [across, down] = [size.width * scale, size.height * scale]
  const left = (width - across) / 2
  const box: Box = { left, right: left + across, top: PAD, bottom: PAD + down }
  const height = down + 2 * PAD
  const on = ([x, y]: readonly [number, number]): Point => point(box.left + x * scale, box.top + y * scale)
  const canvas = new Canvas(width)
  canvas.outline('thick', 'picture', corners(box))
  const drawn = areas.map(({ outlines }) => outlines.map((outline) => outline.map(on)))
  for (const outlines of drawn)
    for (const outline of outlines)
      if (outline.length > 2) canvas.outline('thin', 'area', outline)
      else canvas.curves('thin', 'area', [outline])
  const letters = areas.map(({ name, figure }) => [WORDS.area(name, figure), name])
  for (const [i, wordings] of letters.entries()) {
    const points = (drawn[i] ?? []).flat()
    if (points.length > 0) canvas.placeText('area-name', placesFor([...new Set(wordings)], boxAround(points)), box)
  }
  const title = WORDS.picture
  const description = WORDS.areasDescribed(size.width, size.height, listText(letters.map(([whole]) => whole as string)))
  const whole = canvas.node(height, title, description)
  const node = copy === undefined ? whole : withCopy(whole, box, copy)
  return { node, title, description, omissions: [], width, height }
}

/** The name within the area, then above, below and beside it. */
function* placesFor(wordings: readonly string[], { left, right, top, bottom }: Box): Generator<TextPlacement> {
  for (const text of wordings)
    for (const [x, y, anchor] of [
      [left + 4, top + 4 + ASCENT, 'start'],
      [left + 4, bottom - 6, 'start'],
      [(left + right) / 2, (top + bottom) / 2 + ASCENT / 2, 'middle'],
      [left, top - 6, 'start'],
      [left, bottom + 5 + ASCENT, 'start'],
      [right + 5, (top + bottom) / 2 + ASCENT / 2, 'start'],
      [left - 5, (top + bottom) / 2 + ASCENT / 2, 'end'],
      [right - textWidth(text), top - 6, 'start'],
      [left, top - 22, 'start'],
      [left, bottom + 21 + ASCENT, 'start'],
    ] as const)
      yield { lettering: { text, at: point(x, y), anchor } }
}

/** The copy lies under the lines, pale so that they and the names stay legible. */
function withCopy({ children, ...drawn }: Node, { left, right, top, bottom }: Box, copy: string): Node {
  const [title, description, ...rest] = children
  const image = element('image', {
    class: 'copy',
    href: copy,
    x: left,
    y: top,
    width: right - left,
    height: bottom - top,
    opacity: 0.45,
    preserveAspectRatio: 'none',
  })
  return { ...drawn, children: [title as Node, description as Node, image, ...rest] }
}
