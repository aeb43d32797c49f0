import type { Draw } from '../canvas/drawing-options.ts'
import { drawSetUp } from './set-up.ts'
import { drawUpright } from './upright-set-up.ts'

/** Draws a set-up on a copy stand or an upright one. Upright set-ups are rare, so copy stands do not load their code. */
export const drawAnySetUp: Draw = (inputs, options) =>
  inputs.upright === true ? drawUpright(inputs, options) : drawSetUp(inputs, options)
