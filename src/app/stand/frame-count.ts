import { lengthIn, lengthUnit } from '../../drawings/canvas/drawing-unit.ts'
import { readTiles, type Tile, type TileLayout } from '../../drawings/tiles/tile-layout.ts'
import type { Drawing, Sheet, Steps } from '../../worksheet/index.ts'
import type { StandStep } from './stand-steps.ts'
import { standWords as words } from './words.ts'

/** The frames of a step: how many are taken, of how many, and the move to the next. */
export interface FrameCount {
  readonly taken: number
  /** Undefined where the sheet does not say how many there are. */
  readonly of: number | undefined
  /** The frame to take now, counted from 1; undefined when all are taken. */
  readonly now: number | undefined
  /** What to do after that frame. */
  readonly move: string
}

/** How many frames of a step are taken, and the move to the next; undefined where the step takes none. */
export function frameCount(sheet: Sheet, step: StandStep, drawing: Drawing | undefined): FrameCount | undefined {
  if (!step.countsFrames) return undefined
  const { taken = 0 } = step.list.steps[step.at] ?? {}
  const show = lengthIn(lengthUnit(drawing?.unit))
  const layout = drawing?.drawing === 'tiles' ? readTiles(sheet.drawing(drawing.id).values, [], show) : undefined
  if (!layout) return { taken, of: undefined, now: taken + 1, move: '' }
  const { tiles } = layout
  // A single frame needs no counting.
  if (tiles.length === 1) return undefined
  const [now, next] = [tiles[taken], tiles[taken + 1]]
  return {
    taken: Math.min(taken, tiles.length),
    of: tiles.length,
    now: now?.number,
    move: now && next ? moveText(layout, now, next, show) : now ? words.lastFrame : '',
  }
}

const NO_MOVE = 1e-6

function moveText({ moves }: TileLayout, from: Tile, to: Tile, show: (metres: number) => string): string {
  // The board moves the opposite way.
  const sign = moves === 'board' ? -1 : 1
  const [right, up] = [sign * (to.x - from.x), sign * (to.y - from.y)]
  const ways = [
    Math.abs(right) < NO_MOVE ? [] : [(right > 0 ? words.toTheRight : words.toTheLeft)(show(Math.abs(right)))],
    Math.abs(up) < NO_MOVE ? [] : [(up > 0 ? words.up : words.down)(show(Math.abs(up)))],
  ].flat()
  return words.thenMove(moves, ways.join(', '))
}

/** The list with the frames taken at one of its steps. */
export const withTaken = (list: Steps, at: number, taken: number): Steps => ({
  ...list,
  steps: list.steps.map((step, i) => (i === at ? { ...step, taken } : step)),
})
