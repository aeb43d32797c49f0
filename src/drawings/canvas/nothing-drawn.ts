import { Canvas } from './canvas.ts'
import { point } from './geometry.ts'
import type { Pixels } from './measures.ts'
import type { Drawing } from './tree.ts'
import { CANVAS_WORDS as WORDS } from './words.ts'

/** A placeholder for a drawing with too few inputs; `why` is used if no omission says more. */
export function nothingDrawn(width: Pixels, title: string, omissions: readonly string[], why: string): Drawing {
  const canvas = new Canvas(width)
  const height = 40
  const description = WORDS.nothingDescribed(why)
  const lettering = { text: WORDS.nothingToDraw, at: point(width / 2, 25), anchor: 'middle' as const }
  canvas.placeText('empty', [{ lettering }], { left: 0, right: width, top: 0, bottom: height })
  return {
    node: canvas.node(height, title, description),
    title,
    description,
    omissions: omissions.length > 0 ? omissions : [description],
    width,
    height,
  }
}
