import type { LitPicture } from '../colour/light.ts'
import { FrameError } from '../problem.ts'
import type { EdgeArea } from './area.ts'
import { findEdgeLine, type Region } from './edge-line.ts'
import { edgeProfile } from './edge-profile.ts'
import { type Response, responseOf } from './edge-response.ts'
import { clippedShare, clippingIn, FEW, type Pixels, pixelsOf } from './pixels.ts'
import * as words from './words.ts'

export interface EdgeReading {
  /** How far the edge is tilted from vertical or horizontal, degrees. */
  readonly angle: number
  /** Cycles per pixel along the edge’s normal, and the response there, 1 at 0. */
  readonly sfr: Response
  /** The lowest frequency, up to 1 cycle/px, at which the response has fallen to a half; null where it has not. */
  readonly mtf50: number | null
  readonly mtf10: number | null
  /** mtf10 over 0.5 cycles/px, at most 1. */
  readonly efficiency: number
  /** The greatest response from 0 to 0.5 cycles/px. */
  readonly greatest: number
  readonly warnings: readonly string[]
}

const MOST_PIXELS = 16_000_000
const LEAST_SIDE = 10
/** A response above this says that the picture was sharpened. */
const SHARPENED = 1.1

/**
 * The spatial frequency response of a slanted edge, e-SFR after ISO 12233:2017, annex D, on linear Y.
 * Beside the standard’s method, the response of the bins is corrected as that of the derivative is, and the window is flat
 * in its middle, so that a soft edge measures as soft as it is. Throws FrameError where there is no edge to measure.
 */
export function measureEdge({ name, box }: EdgeArea, picture: LitPicture): EdgeReading {
  const where = `“${name}”`
  const pixels = pixelsOf(box, picture, where)
  const [width, height] = [pixels.right - pixels.left, pixels.bottom - pixels.top]
  if (Math.min(width, height) < LEAST_SIDE) throw new FrameError(words.boxTooSmall(where, width, height))
  if (width * height > MOST_PIXELS) throw new FrameError(words.boxTooLarge(where, width, height))
  refuseClipped(picture, pixels, where)
  const region = regionOf(picture, pixels)
  const line = findEdgeLine(region, where)
  const sfr = responseOf(edgeProfile(line, where))
  const mtf10 = fallsTo(sfr, 0.1)
  const greatest = Math.max(...sfr.filter(([frequency]) => frequency <= 0.5).map(([, response]) => response))
  return {
    angle: (Math.atan(Math.abs(line.slope)) * 180) / Math.PI,
    sfr,
    mtf50: fallsTo(sfr, 0.5),
    mtf10,
    efficiency: mtf10 === null ? 1 : Math.min(1, mtf10 / 0.5),
    greatest,
    warnings: greatest > SHARPENED ? [words.sharpened(greatest.toFixed(2))] : [],
  }
}

function refuseClipped(picture: LitPicture, pixels: Pixels, where: string): void {
  const { full, empty } = clippingIn(picture, pixels)
  if (full > FEW) throw new FrameError(words.edgeClipped(where, clippedShare(full)))
  if (empty > FEW) throw new FrameError(words.edgeBlack(where, clippedShare(empty)))
}

/** The luminance of the box. */
function regionOf(
  { samples, width: stride, channels, luminance }: LitPicture,
  { left, top, right, bottom }: Pixels,
): Region {
  const [width, height] = [right - left, bottom - top]
  const values = new Float64Array(width * height)
  for (let y = 0, to = 0; y < height; y++) {
    let at = ((top + y) * stride + left) * channels
    for (let x = 0; x < width; x++, to++) {
      let Y = 0
      for (let c = 0; c < channels; c++) Y += (luminance[c] as Float64Array)[samples[at++] as number] as number
      values[to] = Y
    }
  }
  return { width, height, values }
}

/** The lowest frequency at which the response has fallen to a level, linear between its points. */
function fallsTo(sfr: Response, level: number): number | null {
  for (let i = 1; i < sfr.length; i++) {
    const [[f, before], [g, after]] = [sfr[i - 1], sfr[i]] as [readonly [number, number], readonly [number, number]]
    if (after <= level) return before === after ? g : f + ((g - f) * (before - level)) / (before - after)
  }
  return null
}
