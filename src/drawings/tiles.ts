import type { Draw } from './drawing-options.ts'
import { nothingDrawn } from './nothing-drawn.ts'

/** Still to come. */
export const drawTiles: Draw = (_inputs, options) =>
  nothingDrawn(options.width, options.title ?? 'Tiles', [], 'It is still to come.')
