import type { Draw } from '../canvas/drawing-options.ts'
import { drawSetUp } from './set-up.ts'
import { drawUpright } from './upright-set-up.ts'

/** A set-up that may lie on a copy stand or stand upright: seldom the latter, so that it has a file of its own. */
export const drawAnySetUp: Draw = (inputs, options) =>
  inputs.upright === true ? drawUpright(inputs, options) : drawSetUp(inputs, options)
