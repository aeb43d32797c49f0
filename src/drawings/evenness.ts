import type { Draw } from './drawing-options.ts'
import { nothingDrawn } from './nothing-drawn.ts'

/** Still to come. */
export const drawEvenness: Draw = (_inputs, options) =>
  nothingDrawn(options.width, options.title ?? 'Evenness', [], 'It is still to come.')
