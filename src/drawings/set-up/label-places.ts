import type { TextPlacement } from '../canvas/canvas.ts'
import { between, boxAround, type Point, point, shareWithin, towards } from '../canvas/geometry.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import { SET_UP_WORDS as WORDS } from './words.ts'

/** Places for the label of the 45° arc. */
export function* aroundArc(origin: Point, radius: number): Generator<TextPlacement> {
  for (const further of [5, 8, 12, 18, 26, 36, 48]) {
    for (const degrees of [24, 18, 30, 12, 36, 48, 56]) {
      const at = towards(origin, (degrees * Math.PI) / 180, radius + further)
      yield { lettering: { text: '45°', at: point(at.x, at.y + ASCENT / 2), anchor: 'start' } }
    }
  }
  for (const inwards of [8, 14]) {
    const at = towards(origin, (20 * Math.PI) / 180, radius - inwards)
    yield { lettering: { text: '45°', at: point(at.x, at.y + ASCENT / 2), anchor: 'end' } }
  }
}

/** Places for the label of the mirror zone: inside it from top to bottom, then outside with a leader. */
export function* zonePlaces(zone: readonly Point[], axis: number): Generator<TextPlacement> {
  const box = boxAround(zone)
  const text = WORDS.mirrorLabel
  for (let y = box.top + 18; y < box.bottom - 6; y += 6) {
    const row = { from: point(box.left - 1, y), to: point(box.right + 1, y) }
    const share = shareWithin(row, zone)
    if (!share) continue
    const [left, right] = [between(row.from, row.to, share[0]).x, between(row.from, row.to, share[1]).x]
    const middle = (left + right) / 2
    const quarter = (right - left) / 4
    for (const x of [
      middle - quarter,
      middle + quarter,
      middle - quarter * 1.2,
      middle + quarter * 1.2,
      middle - quarter * 0.8,
      middle + quarter * 0.8,
    ]) {
      if (x - textWidth(text) / 2 > left + 3 && x + textWidth(text) / 2 < right - 3)
        yield { lettering: { text, at: point(x, y), anchor: 'middle' } }
    }
  }
  // If the zone is too narrow, the label goes outside with a leader into the hatching.
  for (let up = 14; up <= 62; up += 4) {
    for (const side of [1, -1]) {
      for (const aside of [0.45, 0.6, 0.75, 0.3, 0.9, 0.52, 0.67, 0.82, 0.38, 0.22]) {
        const from = point(axis + (side * aside * (box.right - box.left)) / 2, box.top + 5)
        const knee = point(from.x + side * 8, box.top - up)
        const at = point(knee.x + side * 7, knee.y + ASCENT / 2 - 1)
        yield {
          lettering: { text, at, anchor: side > 0 ? 'start' : 'end' },
          lines: [
            { from, to: knee },
            { from: knee, to: point(knee.x + side * 4, knee.y) },
          ],
        }
      }
    }
  }
}
