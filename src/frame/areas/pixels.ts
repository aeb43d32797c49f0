import type { LitPicture } from '../colour/light.ts'
import { FrameError } from '../problem.ts'
import type { Box, Point } from './area.ts'
import * as words from './words.ts'

/** Whole pixels: from `left` up to, not with, `right`. */
export interface Pixels {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

interface Size {
  readonly width: number
  readonly height: number
}

/** The first pixel whose centre is at or beyond a border. */
export const firstPixel = (border: number): number => Math.ceil(border - 0.5)

/** A box may reach this far out of the picture by the rounding of sums, px. */
const ROUNDING = 1e-6

/** The pixels whose centres lie in a box. Throws FrameError where it reaches out of the picture or contains none. */
export function pixelsOf([x, y, w, h]: Box, { width, height }: Size, where: string): Pixels {
  if (Math.min(x, y, width - x - w, height - y - h) < -ROUNDING)
    throw new FrameError(
      words.outside(
        where,
        shown(x + w),
        shown(y + h),
        x < 0 || y < 0 ? words.startsAt(shown(x), shown(y)) : '',
        width,
        height,
      ),
    )
  const pixels = { left: firstPixel(x), top: firstPixel(y), right: firstPixel(x + w), bottom: firstPixel(y + h) }
  if (pixels.left >= pixels.right || pixels.top >= pixels.bottom) throw new FrameError(words.noPixel(where))
  return pixels
}

/** Throws FrameError where a point lies out of the picture. */
export function checkInside([x, y]: Point, { width, height }: Size, what: string): void {
  if (x < 0 || y < 0 || x > width || y > height)
    throw new FrameError(words.pointOutside(what, shown(x), shown(y), width, height))
}

/** A place in pixels, to a hundredth, for a message. */
const shown = (value: number): string => String(Math.round(value * 100) / 100)

/** Up to this share of clipped pixels changes no mean noticeably; a few are hot pixels and noise. */
export const FEW = 0.005

export interface Clipping {
  /** Share of the pixels with a channel at its greatest code. */
  readonly full: number
  /** Share of the pixels with every channel at zero. */
  readonly empty: number
}

/** How much of an area is clipped. */
export function clippingIn(
  { samples, width, channels, most }: LitPicture,
  { left, top, right, bottom }: Pixels,
): Clipping {
  let [full, empty] = [0, 0]
  for (let y = top; y < bottom; y++)
    for (let x = left, at = (y * width + left) * channels; x < right; x++, at += channels) {
      let [isFull, isEmpty] = [false, true]
      for (let c = 0; c < channels; c++) {
        const code = samples[at + c] as number
        if (code === most) isFull = true
        if (code !== 0) isEmpty = false
      }
      if (isFull) full++
      if (isEmpty) empty++
    }
  const count = (right - left) * (bottom - top)
  return { full: full / count, empty: empty / count }
}

const percent = (share: number): string =>
  `${share >= 0.0995 ? Math.round(share * 100) : Math.round(share * 1000) / 10} %`

/** What to know of a clipped area that is measured all the same. */
export function clippingWarnings({ full, empty }: Clipping, where: string): string[] {
  return [
    ...(full > FEW ? [words.clipped(percent(full), where)] : []),
    ...(empty > FEW ? [words.black(percent(empty), where)] : []),
  ]
}

export const clippedShare = percent
