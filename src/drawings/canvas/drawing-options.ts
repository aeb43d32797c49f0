import type { Value } from '../../language/index.ts'
import type { Pixels } from './measures.ts'
import type { Drawing } from './tree.ts'

/** The values of a drawing's inputs in coherent SI; an input is absent while its value is unknown. */
export type DrawingInputs = Readonly<Record<string, Value | undefined>>

export interface DrawingOptions {
  /** Width of the view box. The drawing must be shown at this width for its text to have the intended size. */
  readonly width: Pixels
  /** How many times larger than its view box the drawing is shown, so that the scale written in it is true. */
  readonly zoom?: number
  /** The unit of the figures, as set in the cell; each kind uses its default unit if it does not know this one. */
  readonly unit?: string | undefined
  readonly title?: string | undefined
  /** The input whose dimension is drawn thick: the one that the present step is about. */
  readonly emphasis?: string | undefined
  /** True while something is dragged: computes a coarser drawing, so that the next frame is on time. */
  readonly quick?: boolean
  /** While a lamp is dragged: the drawing in which the drag began, whose scale and layout are reused. */
  readonly layoutFrom?: Drawing | undefined
}

/** Draws SVG with its description from numbers. It throws for no inputs. */
export type Draw = (inputs: DrawingInputs, options: DrawingOptions) => Drawing
