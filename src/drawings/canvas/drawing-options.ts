import type { Value } from '../../language/index.ts'
import type { Drawing } from './tree.ts'

/** What a drawing is fed with: coherent SI by input, each where it is known. */
export type DrawingInputs = Readonly<Record<string, Value | undefined>>

export interface DrawingOptions {
  /** Of the view box, in CSS px: what it is shown at, for its lettering to have the size meant. */
  readonly width: number
  /** How many times larger than its view box it is shown, so that a scale it says is the one seen. */
  readonly zoom?: number
  /** The unit figures are written in, as the cell says it; each kind has its own where this is none it knows. */
  readonly unit?: string | undefined
  readonly title?: string | undefined
  /** While something is dragged: coarser, for the next frame to come in time. */
  readonly quick?: boolean
  /** While something is dragged: the drawing it was taken hold of in, whose scale and places are kept. */
  readonly layoutFrom?: Drawing | undefined
}

/** Draws: numbers in, a tree of SVG and its words out. It never throws, whatever it is fed with. */
export type Draw = (inputs: DrawingInputs, options: DrawingOptions) => Drawing
