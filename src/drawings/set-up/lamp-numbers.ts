import type { Canvas } from '../canvas/canvas.ts'
import { type Box, type Point, point, towards } from '../canvas/geometry.ts'
import { ASCENT } from '../canvas/lettering.ts'

/** A lamp in the coordinates of a view. */
interface Seen {
  readonly number: number
  readonly at: Point
  readonly aim: Point
}

/** Writes beside each lamp its number in the description; a symmetric pair and a single lamp need none. */
export function numberLamps(canvas: Canvas, lamps: readonly Seen[], pair: boolean, within: Box): void {
  if (lamps.length < 2 || pair) return
  for (const { number, at, aim } of lamps) {
    const away = Math.atan2(aim.y - at.y, at.x - aim.x)
    const places = [26, 22, 30].flatMap((far) =>
      [Math.PI / 2, -Math.PI / 2, 0, 2, -2, Math.PI * 0.75, -Math.PI * 0.75].map((turn) => {
        const middle = towards(at, away + turn, far)
        return {
          lettering: { text: `${number}`, at: point(middle.x, middle.y + ASCENT / 2), anchor: 'middle' as const },
        }
      }),
    )
    canvas.placeText(`lamp-number lamp-${number}`, places, within)
  }
}
