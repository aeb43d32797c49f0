import { Canvas } from '../canvas/canvas.ts'
import type { Draw } from '../canvas/drawing-options.ts'
import { lengthIn } from '../canvas/drawing-unit.ts'
import { boxAround, grown, inside, overlap, type Point, point } from '../canvas/geometry.ts'
import { ASCENT } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { apertureText, figureText, ratioText } from '../canvas/text-figures.ts'
import { TITLES } from '../canvas/words.ts'
import {
  ABOVE,
  apertureAxis,
  apertureMarks,
  BELOW,
  drawAxes,
  figuresWidth,
  logAxis,
  MARK_ROW,
  markAcross,
  type Plot,
  plotted,
} from '../plots/axes.ts'
import { type Curve, letterBeside, letterOnCurve } from '../plots/curve-labels.ts'
import { cutAround } from '../plots/cut.ts'
import { type DepthFigures, readDepth } from './depth-figures.ts'
import { depthTable, describeDepth } from './describe-depth.ts'
import { DEPTH_WORDS as WORDS } from './words.ts'

const PAD = 4
const ROW = 18
const NARROWEST = 240
/** The largest ratio of the vertical axis; a larger one would flatten the relevant part. */
const DECADES = 1e3

/** Plots the blur from defocus, diffraction and the pixel against the aperture, on a scale of stops. */
export const drawDepth: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? TITLES.depth
  const omissions: string[] = []
  const depth = readDepth(inputs, omissions)
  if (!depth) return nothingDrawn(width, title, omissions, WORDS.needsMagnification)
  if (depth.depth === undefined) omissions.push(WORDS.needsDepth)

  const inPixels = depth.pitch !== undefined && options.unit !== 'µm'
  const unit = inPixels ? 'px' : 'µm'
  const shown = (metres: number): number => metres / (inPixels ? (depth.pitch as number) : 1e-6)

  const heads = headsOf(depth, shown, unit)
  const rows = depth.best !== undefined && depth.aperture !== undefined ? 2 : 1
  const top = PAD + heads.length * ROW + ABOVE + rows * MARK_ROW
  const bottom = top + Math.round(Math.min(300, Math.max(170, width * 0.66)))
  const height = bottom + BELOW + PAD
  const paper = { left: 0, right: width, top: 0, bottom: height }

  const y = logAxis(endsOf(depth, shown), [bottom, top], WORDS.blurAxis(unit))
  const left = PAD + figuresWidth(y)
  const x = apertureAxis(depth.range, [left, width - PAD - 8], WORDS.apertureAxis)
  const plot: Plot = { box: { left, right: width - PAD - 8, top, bottom }, x, y }

  const canvas = new Canvas(width)
  for (const [at, text] of heads.entries())
    canvas.placeText(
      'head',
      [{ lettering: { text, at: point(PAD, PAD + ASCENT + 1 + at * ROW), anchor: 'start' } }],
      paper,
    )
  drawAxes(canvas, plot, paper, rows * MARK_ROW)
  drawAcross(canvas, plot, depth, rows)

  const curves = curvesOf(plot, depth, shown, unit)
  for (const curve of curves)
    if (!letterOnCurve(canvas, curve, curves, grown(plot.box, -1)))
      letterBeside(canvas, curve, curves, grown(plot.box, -1))
  const lettered = canvas.textBoxes.map((one) => grown(one, 2))
  for (const { stroke, className, runs } of curves) canvas.curves(stroke, className, cutAround(runs, lettered))
  drawMarks(canvas, plot, depth, shown)

  const description = describeDepth(depth, shown, unit)
  return {
    node: canvas.node(height, title, description),
    title,
    description,
    table: depthTable(depth, shown, unit),
    omissions,
    width,
    height,
  }
}

function headsOf(depth: DepthFigures, shown: (metres: number) => number, unit: string): readonly string[] {
  const ratio = ratioText(depth.magnification)
  const first = depth.depth === undefined ? WORDS.ratioHead(ratio) : WORDS.depthHead(lengthIn('mm')(depth.depth), ratio)
  const blur = (aperture: number): string => `${figureText(shown(depth.blurAt(aperture).together))} ${unit}`
  return [
    first,
    ...(depth.aperture === undefined ? [] : [WORDS.setHead(apertureText(depth.aperture), blur(depth.aperture))]),
    ...(depth.best === undefined ? [] : [WORDS.bestHead(apertureText(depth.best), blur(depth.best))]),
  ]
}

/** The range of the vertical axis: from below the least relevant part to above the greatest sum. */
function endsOf(depth: DepthFigures, shown: (metres: number) => number): readonly [number, number] {
  const ends = depth.range.map((aperture) => depth.blurAt(aperture))
  const most = Math.max(...ends.map(({ together }) => together), depth.allowed ?? 0)
  const parts = ends
    .flatMap(({ defocus, diffraction, pixel }) => [defocus, diffraction, pixel])
    .filter((one) => one > 0)
  // A part that is negligible in the sum is not followed down to its end.
  const floor = Math.min(...ends.map(({ together }) => together), most) / 12
  const least = Math.max(Math.min(...parts, depth.allowed ?? most), floor, most / DECADES)
  return [shown(least) * 0.85, shown(most) * 1.15]
}

function curvesOf(plot: Plot, depth: DepthFigures, shown: (metres: number) => number, unit: string): readonly Curve[] {
  const curve = (
    className: string,
    text: string,
    stroke: Curve['stroke'],
    blur: (aperture: number) => number,
  ): Curve => ({
    className,
    text,
    stroke,
    runs: plotted(plot, (aperture) => shown(blur(aperture))),
  })
  const { allowed } = depth
  return [
    curve('together', WORDS.together, 'thick', (aperture) => depth.blurAt(aperture).together),
    ...(allowed === undefined
      ? []
      : [curve('allowed', WORDS.allowed(`${figureText(shown(allowed))} ${unit}`), 'chain', () => allowed)]),
    curve('diffraction', WORDS.diffraction, 'dashed', (aperture) => depth.blurAt(aperture).diffraction),
    ...(depth.depth === undefined
      ? []
      : [curve('defocus', WORDS.defocus, 'thin', (aperture) => depth.blurAt(aperture).defocus)]),
    ...(depth.pitch === undefined ? [] : [curve('pixel', WORDS.pixelCurve, 'dotted', () => depth.pitch as number)]),
  ]
}

/** Marks the aperture set and the best one across the plot. */
function drawAcross(canvas: Canvas, plot: Plot, depth: DepthFigures, rows: number): void {
  const { x } = plot
  const onPlot = (value: number | undefined): value is number =>
    value !== undefined && value >= x.from * (1 - 1e-9) && value <= x.to * (1 + 1e-9)
  const { best, aperture } = depth
  const lean = onPlot(best) && onPlot(aperture) ? (aperture < best ? -1 : 1) : 0
  if (onPlot(aperture)) {
    const wordings = [WORDS.setTo(apertureText(aperture)), apertureText(aperture)]
    markAcross(canvas, plot, { className: 'set', value: aperture, stroke: 'thin', wordings, rows, lean, present: true })
  }
  if (onPlot(best)) {
    const word = WORDS.best(apertureText(best))
    const wordings =
      depth.bestMark === undefined ? [word] : [WORDS.bestWithMark(apertureText(best), depth.bestMark), word]
    markAcross(canvas, plot, { className: 'best', value: best, stroke: 'dashed', wordings, rows, lean: -lean })
  }
}

/** Marks the apertures of the lens on the curve of the sum, where no text is in the way. */
function drawMarks(canvas: Canvas, plot: Plot, depth: DepthFigures, shown: (metres: number) => number): void {
  const { x, y, box } = plot
  for (const { exact } of apertureMarks(depth.range[0], depth.range[1])) {
    const at = point(x.place(exact), y.place(shown(depth.blurAt(exact).together)))
    const mark = boxAround(diamond(at, 2.4))
    if (!inside(mark, grown(box, 3)) || canvas.textBoxes.some((one) => overlap(one, mark))) continue
    canvas.body('thin', 'aperture-mark', diamond(at, 2.4), { filled: true })
  }
}

const diamond = ({ x, y }: Point, half: number): readonly Point[] => [
  point(x, y - half),
  point(x + half, y),
  point(x, y + half),
  point(x - half, y),
]
