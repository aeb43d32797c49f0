import { type Dimension, drawDimension, letterDimension } from './dimension-line.ts'
import { type Frame, type Lettering, lampsSeen } from './elevation.ts'
import { corners, type Point, point } from './geometry.ts'
import { arrowhead, lampOutline } from './lamp-outline.ts'
import { ASCENT, textWidth } from './lettering.ts'
import type { Lamp, SetUp } from './set-up-inputs.ts'
import type { Sheet } from './sheet.ts'

const ROW = 18
const sameLength = (a: number, b: number): boolean => Math.abs(a - b) < 5e-4

/** The lamps whose distances across the centre line are given in plan, the nearest first. */
export function lampOffsets(lamps: readonly Lamp[]): readonly Lamp[] {
  const seen: Lamp[] = []
  for (const lamp of [...lamps].sort((a, b) => b.x - a.x || b.y - a.y)) {
    if (Math.abs(lamp.y) > 5e-4 && !seen.some((other) => sameLength(Math.abs(other.y), Math.abs(lamp.y))))
      seen.push(lamp)
  }
  return seen.sort((a, b) => Math.abs(a.y) - Math.abs(b.y)).slice(0, 2)
}

interface Noted {
  readonly as: string
  readonly text: string
  readonly halfWidth: number
  readonly halfHeight: number
}

/** What is written under the plan, with a line to what it is about. */
export function planNotes(setUp: SetUp, show: (metres: number) => string): readonly Noted[] {
  const size = (width: number, height: number) => `${show(width).replace(/ \D+$/, '')} × ${show(height)}`
  const { originalWidth, originalHeight, fieldWidth, fieldHeight } = setUp
  const notes: Noted[] = []
  if (originalWidth !== undefined && originalHeight !== undefined) {
    notes.push({
      as: 'original',
      text: `original ${size(originalWidth, originalHeight)}`,
      halfWidth: originalWidth / 2,
      halfHeight: originalHeight / 2,
    })
  }
  if (fieldWidth !== undefined && fieldHeight !== undefined) {
    notes.push({
      as: 'field',
      text: `field ${size(fieldWidth, fieldHeight)}`,
      halfWidth: fieldWidth / 2,
      halfHeight: fieldHeight / 2,
    })
  }
  return notes
}

export const notesHeight = (notes: readonly Noted[]): number => (notes.length === 0 ? 0 : notes.length * ROW + 8)

/** Draws the set-up seen from above, on the same centre line as the elevation. */
export function drawPlan(sheet: Sheet, setUp: SetUp, frame: Frame): { letter: Lettering } {
  const { origin, pxPerMetre, view, board, show } = frame
  const at = (x: number, y: number): Point => point(origin.x + x * pxPerMetre, origin.y - y * pxPerMetre)
  const px = (metres: number): number => metres * pxPerMetre
  const rectangle = (halfWidth: number, halfHeight: number): readonly Point[] => [
    at(-halfWidth, halfHeight),
    at(halfWidth, halfHeight),
    at(halfWidth, -halfHeight),
    at(-halfWidth, -halfHeight),
  ]
  const lamps = lampsSeen(setUp.lamps, 'z')
  const notes = planNotes(setUp, show)

  sheet.outline('thin', 'board', rectangle(board.halfWidth, board.halfDepth))
  for (const { as, halfWidth, halfHeight } of notes) {
    sheet.outline(as === 'original' ? 'thick' : 'dashed', as, rectangle(halfWidth, halfHeight))
  }
  if (setUp.column !== undefined) {
    const half = Math.max(px(0.03), 3.5)
    const back = at(0, board.halfDepth).y
    sheet.body(
      'thick',
      'column',
      corners({ left: origin.x - half, right: origin.x + half, top: back - 2 * half, bottom: back }),
    )
  }
  for (const lamp of lamps) {
    const from = at(lamp.x, lamp.y)
    const aim = at(lamp.aim_x, lamp.aim_y)
    sheet.body('thick', `lamp lamp-${lamp.number}`, lampOutline(from, aim, pxPerMetre))
    sheet.line('dashed', `aim aim-${lamp.number}`, from, aim)
    sheet.lines('thin', `aim-arrow aim-${lamp.number}`, arrowhead(from, aim))
  }
  const offsets = lampOffsets(lamps)
  const dimensions = offsets.map((lamp, index): Dimension => {
    const lane = view.right - 5 - (offsets.length - 1 - index) * 20
    return {
      as: `dimension-offset-${lamp.number}`,
      direction: 'upright',
      from: point(origin.x + 12, origin.y),
      to: at(lamp.x, lamp.y),
      at: lane,
      wordings: [show(Math.abs(lamp.y))],
      extensions: [index === offsets.length - 1, true],
    }
  })
  for (const one of dimensions) drawDimension(sheet, one)
  drawCentre()

  function drawCentre(): void {
    const reach = (half: number | undefined) => Math.max(px(half ?? 0) + 8, 10)
    const across = reach(Math.max(setUp.originalWidth ?? 0, setUp.fieldWidth ?? 0) / 2)
    const up = reach(Math.max(setUp.originalHeight ?? 0, setUp.fieldHeight ?? 0) / 2)
    sheet.lines('chain', 'axis', [
      { from: point(origin.x - across, origin.y), to: point(origin.x + across, origin.y) },
      { from: point(origin.x, origin.y - up), to: point(origin.x, origin.y + up) },
    ])
  }

  function letter(): void {
    for (const one of dimensions) letterDimension(sheet, one, view)
    const first = view.bottom - notes.length * ROW + ASCENT + 2
    notes.forEach((note, index) => {
      const y = first + index * ROW
      // The first note leads up on the left, the second on the right, past the first one's end.
      const side = index === 0 ? -1 : 1
      const foot = at((side * note.halfWidth) / 2, -note.halfHeight)
      const width = textWidth(note.text)
      const end =
        index === 0
          ? Math.max(view.left + width, Math.min(foot.x - 6, origin.x))
          : Math.min(view.right - width, Math.max(foot.x + 6, origin.x))
      const shelf = point(end - side * 4, y - ASCENT / 2 + 1)
      const knee = point(end - side * 10, shelf.y)
      sheet.letter(
        `note-${note.as}`,
        [
          {
            lettering: { text: note.text, at: point(end, y), anchor: index === 0 ? 'end' : 'start' },
            lines: [
              { from: shelf, to: knee },
              { from: knee, to: foot },
            ],
          },
        ],
        view,
      )
    })
  }

  return { letter }
}
