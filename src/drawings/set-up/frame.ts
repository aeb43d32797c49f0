import type { Box, Point } from '../canvas/geometry.ts'

/** The position of a view on the canvas. */
export interface Frame {
  /** The centre of the original in pixels. */
  readonly origin: Point
  readonly pxPerMetre: number
  /** The area in which text may be placed. */
  readonly view: Box
  /** The horizontal space between the dimensions at both sides, in pixels. */
  readonly inner: { readonly left: number; readonly right: number }
  readonly board: { readonly halfWidth: number; readonly halfDepth: number }
  readonly show: (metres: number) => string
}

/** Places the texts of a view; called after all lines of the drawing exist, so that texts avoid them. */
export type DeferredLettering = () => void
