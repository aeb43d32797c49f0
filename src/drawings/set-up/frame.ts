import type { Box, Point } from '../canvas/geometry.ts'

/** Where a view stands on the sheet. */
export interface Frame {
  /** The px of the centre of the original. */
  readonly origin: Point
  readonly pxPerMetre: number
  /** Lettering stays within. */
  readonly view: Box
  /** Between the dimensions at either side. */
  readonly inner: { readonly left: number; readonly right: number }
  readonly board: { readonly halfWidth: number; readonly halfDepth: number }
  readonly show: (metres: number) => string
}

/** What remains to be done once every line of the drawing stands. */
export type DeferredLettering = () => void
