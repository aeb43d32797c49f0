import { Canvas } from './canvas.ts'
import { point } from './geometry.ts'
import type { Drawing } from './tree.ts'

/** What stands in a drawing's place while too little is known; `why` is said where nothing more exact is. */
export function nothingDrawn(width: number, title: string, omissions: readonly string[], why: string): Drawing {
  const canvas = new Canvas(width)
  const height = 40
  const description = `Nothing can be drawn yet: ${why}`
  const lettering = { text: 'Nothing to draw yet', at: point(width / 2, 25), anchor: 'middle' as const }
  canvas.placeText('empty', [{ lettering }], { left: 0, right: width, top: 0, bottom: height })
  return {
    node: canvas.node(height, title, description),
    title,
    description,
    omissions: omissions.length > 0 ? omissions : [`Nothing is drawn: ${why}`],
    width,
    height,
  }
}
