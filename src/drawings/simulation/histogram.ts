import { count } from '../../units/plural.ts'
import type { SimulatedFigure } from '../../worksheet/simulation/tally.ts'
import { Canvas, type TextPlacement } from '../canvas/canvas.ts'
import { type Point, point } from '../canvas/geometry.ts'
import { ASCENT } from '../canvas/lettering.ts'
import type { Node } from '../canvas/tree.ts'
import { HISTOGRAM_WORDS as WORDS } from './words.ts'

const PAD = 8
const HEIGHT = 96
/** Room for the figures below the bars. */
const BELOW = 24

/** How often simulated tries gave which value, with the ends of the interval that holds 95 % of them dashed. */
export function histogram(
  figure: SimulatedFigure,
  { label, show, width }: { label: string; show: (value: number) => string; width: number },
): Node | undefined {
  const { histogram: classes, low95, high95, mean } = figure
  if (!classes || !(classes.to > classes.from)) return undefined
  const { from, to, counts } = classes
  const canvas = new Canvas(width)
  const across = (value: number): number => PAD + ((width - 2 * PAD) * (value - from)) / (to - from)
  const most = Math.max(...counts)
  const side = (width - 2 * PAD) / counts.length
  const down = (n: number): number => PAD + (HEIGHT - PAD) * (1 - n / most)
  const steps = counts.flatMap((n, i): Point[] => [
    point(PAD + i * side, down(n)),
    point(PAD + (i + 1) * side, down(n)),
  ])
  canvas.body('thin', 'classes', [point(PAD, HEIGHT), ...steps, point(width - PAD, HEIGHT)])
  for (const end of [low95, high95])
    canvas.line('dashed', 'interval', point(across(end), PAD), point(across(end), HEIGHT + 5))
  canvas.line('emphasis', 'mean', point(across(mean), HEIGHT), point(across(mean), HEIGHT + 5))
  const paper = { left: 0, right: width, top: HEIGHT + 5, bottom: HEIGHT + BELOW }
  const shown = [
    [low95, 'interval'],
    [high95, 'interval'],
    [mean, 'mean'],
  ] as const
  for (const [value, className] of shown) canvas.placeText(className, below(show(value), across(value)), paper)
  const tries = counts.reduce((sum, n) => sum + n, 0)
  return canvas.node(
    HEIGHT + BELOW,
    WORDS.title(label),
    WORDS.description(count(tries), show(from), show(to), show(low95), show(high95)),
  )
}

/** Under the place, or beside it where there is no room. */
const below = (text: string, x: number): TextPlacement[] =>
  (['middle', 'start', 'end'] as const).map((anchor) => ({
    lettering: { text, at: point(x, HEIGHT + 8 + ASCENT), anchor },
  }))
