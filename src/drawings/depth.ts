import type { Draw } from './drawing-options.ts'
import { nothingDrawn } from './nothing-drawn.ts'

/** Still to come. */
export const drawDepth: Draw = (_inputs, options) =>
  nothingDrawn(options.width, options.title ?? 'Depth', [], 'It is still to come.')
