import type { Canvas, TextPlacement } from '../canvas/canvas.ts'
import { type Dimension, drawDimension, figures, LANE, letterDimension } from '../canvas/dimension-line.ts'
import { corners, type Point, point } from '../canvas/geometry.ts'
import { arrowhead, lampOutline } from '../canvas/lamp-outline.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import { sizeText } from './describe-set-up.ts'
import type { DeferredLettering, Frame } from './frame.ts'
import { isPair, lampOffsets, lampsSeen, offsetLanes } from './lamp-choice.ts'
import { numberLamps } from './lamp-numbers.ts'
import type { Lamp, SetUp } from './set-up-inputs.ts'
import { SET_UP_WORDS as WORDS } from './words.ts'

const ROW = 18

interface PlanNote {
  readonly className: string
  readonly text: string
  readonly halfWidth: number
  readonly halfHeight: number
}

/** The notes below the plan, each with a leader to the rectangle it names. */
export function planNotes(setUp: SetUp, show: (metres: number) => string): readonly PlanNote[] {
  const { originalWidth, originalHeight, fieldWidth, fieldHeight } = setUp
  const notes: PlanNote[] = []
  if (originalWidth !== undefined && originalHeight !== undefined) {
    notes.push({
      className: 'original',
      text: `${WORDS.originalLabel} ${sizeText(originalWidth, originalHeight, show)}`,
      halfWidth: originalWidth / 2,
      halfHeight: originalHeight / 2,
    })
  }
  if (fieldWidth !== undefined && fieldHeight !== undefined) {
    notes.push({
      className: 'field',
      text: `${WORDS.fieldLabel} ${sizeText(fieldWidth, fieldHeight, show)}`,
      halfWidth: fieldWidth / 2,
      halfHeight: fieldHeight / 2,
    })
  }
  return notes
}

/** The height that notes under a plan take, in pixels. */
export const notesHeight = (notes: readonly PlanNote[]): number => (notes.length === 0 ? 0 : notes.length * ROW + 8)

/** Draws the set-up from above, on the centre line of the elevation. */
export function drawPlan(canvas: Canvas, setUp: SetUp, frame: Frame): { letter: DeferredLettering } {
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

  canvas.outline('thin', 'board', rectangle(board.halfWidth, board.halfDepth))
  for (const { className, halfWidth, halfHeight } of notes) {
    canvas.outline(className === 'original' ? 'thick' : 'dashed', className, rectangle(halfWidth, halfHeight))
  }
  if (setUp.column !== undefined) {
    const half = Math.max(px(0.03), 3.5)
    const back = at(0, board.halfDepth).y
    canvas.body(
      'thick',
      'column',
      corners({ left: origin.x - half, right: origin.x + half, top: back - 2 * half, bottom: back }),
    )
  }
  for (const lamp of lamps) {
    const from = at(lamp.x, lamp.y)
    const aim = at(lamp.aim_x, lamp.aim_y)
    canvas.body('thick', `lamp lamp-${lamp.number}`, lampOutline(from, aim, pxPerMetre))
    canvas.line('dashed', `aim aim-${lamp.number}`, from, aim)
    canvas.lines('thin', `aim-arrow aim-${lamp.number}`, arrowhead(from, aim))
  }
  const dimensions = drawOffsets()
  drawCentre()

  function drawOffsets(): readonly Dimension[] {
    const { up, down } = lampOffsets(lamps)
    const lanes = offsetLanes(lamps)
    const lane = (lamp: Lamp, index: number): Dimension => ({
      className: `dimension-offset-${lamp.number}`,
      direction: 'upright',
      from: origin,
      to: at(lamp.x, lamp.y),
      at: view.right - 5 - (lanes - 1 - index) * LANE,
      wordings: figures(show(Math.abs(lamp.y))),
      extensions: [false, true],
    })
    const all = [...up.map(lane), ...down.map(lane)]
    for (const one of all) drawDimension(canvas, one)
    const level = { from: origin, to: point(view.right - 1, origin.y) }
    if (all.length > 0) canvas.lines('dimension', 'datum', canvas.around(level))
    return all
  }

  function drawCentre(): void {
    const reach = (half: number | undefined) => Math.max(px(half ?? 0) + 8, 10)
    const across = reach(Math.max(setUp.originalWidth ?? 0, setUp.fieldWidth ?? 0) / 2)
    const up = reach(Math.max(setUp.originalHeight ?? 0, setUp.fieldHeight ?? 0) / 2)
    canvas.lines('chain', 'axis', [
      { from: point(origin.x - across, origin.y), to: point(origin.x + across, origin.y) },
      { from: point(origin.x, origin.y - up), to: point(origin.x, origin.y + up) },
    ])
  }

  function letter(): void {
    for (const one of dimensions) letterDimension(canvas, one, view)
    numberLamps(
      canvas,
      lamps.map((lamp) => ({ number: lamp.number, at: at(lamp.x, lamp.y), aim: at(lamp.aim_x, lamp.aim_y) })),
      isPair(lamps),
      { ...view, bottom: view.bottom - notesHeight(notes) },
    )
    writeNotes(canvas, notes, frame)
  }

  return { letter }
}

/** Places each note on a separate row: the first left of its leader, the second right of it or, without space there, left. */
function writeNotes(canvas: Canvas, notes: readonly PlanNote[], { origin, pxPerMetre, view }: Frame): void {
  const first = view.bottom - notes.length * ROW + ASCENT + 2
  let taken = Number.NEGATIVE_INFINITY
  notes.forEach((note, index) => {
    const y = first + index * ROW
    const half = note.halfWidth * pxPerMetre
    const width = textWidth(note.text)
    const placesOn = (side: -1 | 1): readonly TextPlacement[] => {
      const least = Math.max(taken + 6 + side * 8, side < 0 ? view.left + width + 1 : view.left + 9)
      const most = side < 0 ? view.right - 12 : view.right - width - 1
      const ideal = origin.x + (index === 0 ? -1 : 1) * Math.max(half * 0.5, 10) + side * 8
      const end = Math.max(least, Math.min(most, ideal))
      return [0, 1, -1, 2, -2, 3, -3, 4, -4].map((step) => {
        const from = Math.max(least, Math.min(most, end + step * 14))
        const knee = point(from - side * 8, y - ASCENT / 2 + 1)
        const foot = point(
          Math.min(origin.x + half * 0.8, Math.max(origin.x - half * 0.8, knee.x)),
          origin.y + note.halfHeight * pxPerMetre,
        )
        return {
          lettering: { text: note.text, at: point(from, y), anchor: side < 0 ? 'end' : 'start' },
          lines: [
            { from: point(from - side * 3, knee.y), to: knee },
            { from: knee, to: foot },
          ],
        }
      })
    }
    const places = index === 0 ? placesOn(-1) : [...placesOn(1), ...placesOn(-1)]
    const chosen = places.find((place) => canvas.placeText(`note-${note.className}`, [place], view))
    taken = chosen?.lines?.[0]?.to.x ?? taken
  })
}
