import type { LitPicture } from '../../../src/frame/colour/light.ts'
import { openFrame } from '../../../src/frame/measure.ts'
import { seeded } from '../../random.ts'
import { type Made, make, png } from '../files.ts'

export type Four = readonly [
  readonly [number, number],
  readonly [number, number],
  readonly [number, number],
  readonly [number, number],
]

/** How far inside a convex outline, clockwise with y down, a point lies: px to the nearest side, negative outside. */
const depthIn = (corners: Four, x: number, y: number): number =>
  Math.min(
    ...corners.map(([ax, ay], i) => {
      const [bx, by] = corners[(i + 1) % 4] as readonly [number, number]
      return ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay)
    }),
  )

export interface Scene {
  readonly width: number
  readonly height: number
  /** Light, 0 to 1, of the ground and of each card at a point. */
  readonly ground: (x: number, y: number) => number
  readonly cards: readonly { readonly corners: Four; readonly light: (x: number, y: number) => number }[]
  readonly noise?: number
  readonly seed?: number
}

/** The sRGB code of light (IEC 61966-2-1), 0 to 1. */
function codeOf(light: number): number {
  const y = Math.min(1, Math.max(0, light))
  return y <= 0.0031308 ? 12.92 * y : 1.055 * y ** (1 / 2.4) - 0.055
}

/**
 * A grey picture of cards on a ground, each pixel the mean of the light over it, then encoded: a mean of codes would be
 * darker than that of the light, and move every edge towards the bright side.
 */
export function scene({ width, height, ground, cards, noise = 0, seed = 1 }: Scene): Made {
  const random = seeded((seed % 2147483646) + 1)
  return make(width, height, 1, 16, (x, y) => {
    let value = ground(x + 0.5, y + 0.5)
    for (const { corners, light } of cards) {
      const deep = depthIn(corners, x + 0.5, y + 0.5)
      if (deep <= -1) continue
      const share = deep >= 1 ? 1 : shareOf(corners, x, y)
      value = value * (1 - share) + light(x + 0.5, y + 0.5) * share
    }
    return Math.round(65535 * codeOf(value + noise * (random() + random() + random() - 1.5)))
  })
}

/** The share of a pixel within an outline, from 64 points of it. */
function shareOf(corners: Four, x: number, y: number): number {
  let inside = 0
  for (let j = 0; j < 8; j++)
    for (let i = 0; i < 8; i++) if (depthIn(corners, x + (i + 0.5) / 8, y + (j + 0.5) / 8) >= 0) inside++
  return inside / 64
}

export const opened = (made: Made): LitPicture => openFrame(png(made)).picture
