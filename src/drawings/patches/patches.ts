import { showFigure } from '../../units/index.ts'
import { Canvas } from '../canvas/canvas.ts'
import type { Draw } from '../canvas/drawing-options.ts'
import { type Box, corners, type Point, point, towards } from '../canvas/geometry.ts'
import { arrowhead } from '../canvas/lamp-outline.ts'
import { DESCENT, textWidth } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { fittedText } from '../plots/fitted-text.ts'
import { numberIn, numbersIn, textsIn } from '../plots/given-values.ts'
import { letterRow, rowColumns } from '../plots/row-columns.ts'
import { roundTicks } from '../plots/ticks.ts'

const NARROWEST = 240
const PAD = 4
const ROW = 21
const LABEL_ROW = 18
/** A larger target is drawn by its worst patches. */
const MOST_ROWS = 40
/** Past so many times the allowance a dot is drawn at the edge, its figure beside it. */
const FARTHEST = 4
const DOT = 4

/** A limit as it is drawn and named, its line down to `end`. */
interface Allowance {
  readonly className: string
  readonly value: number
  readonly stroke: 'dashed' | 'chain'
  readonly text: string
  readonly end: number
}

interface Patch {
  readonly name: string
  readonly value: number
}

const figure = (value: number): string => showFigure(Number(value.toPrecision(9)))

/** Each patch's difference as a dot on its allowance, the worst said, the mean on its own allowance below. */
export const drawPatches: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? 'Patches against their aims'
  const given = numbersIn(inputs.differences)
  if (!given || given.length === 0) return nothingDrawn(width, title, [], 'no differences are known.')
  const omissions: string[] = []
  const names = textsIn(inputs.names)
  if (inputs.names !== undefined && !names) omissions.push('The patches are not named: their names are no texts.')
  const all: Patch[] = given.flatMap((value, at): readonly Patch[] => {
    const name = names?.[at]?.trim() || `patch ${at + 1}`
    // A difference has no sign, though a tone's may: its size is what is allowed or not.
    if (Number.isFinite(value) && Math.abs(value) < 1e6) return [{ name, value: Math.abs(value) }]
    omissions.push(`«${name}» is left out: its difference is no number.`)
    return []
  })
  if (all.length === 0) return nothingDrawn(width, title, omissions, 'no differences are known.')
  const allowance = (name: string, what: string): number | undefined => {
    const value = numberIn(inputs[name])
    if (value !== undefined && value > 0 && value < 1e6) return value
    if (inputs[name] !== undefined) omissions.push(`${what} is not drawn: it is not above zero.`)
    return undefined
  }
  const limit = allowance('limit', 'What a patch is allowed')
  const meanLimit = allowance('mean_limit', 'What the mean is allowed')

  const byValue = [...all].sort((a, b) => b.value - a.value)
  const worst = byValue[0] as Patch
  const mean = all.reduce((sum, { value }) => sum + value, 0) / all.length
  const cut = all.length > MOST_ROWS
  const rows = cut ? byValue.slice(0, MOST_ROWS) : inputs.sorted === true ? byValue : all
  if (cut)
    omissions.push(
      `The ${all.length - MOST_ROWS} patches that are off least are not drawn; none is off by more than ${figure((byValue[MOST_ROWS] as Patch).value)}.`,
    )
  const over = (value: number, allowed: number | undefined): boolean =>
    allowed !== undefined && value > allowed * (1 + 1e-12)
  const figureOf = (patch: Patch): string =>
    [
      ...(patch === worst && all.length > 1 ? ['worst'] : []),
      ...(over(patch.value, limit) ? ['over'] : []),
      figure(patch.value),
    ].join(' ')
  const meanFigure = over(mean, meanLimit) ? `over ${figure(mean)}` : figure(mean)
  const columns = rowColumns(['mean', ...rows.map(({ name }) => name)], [meanFigure, ...rows.map(figureOf)], width)

  const allowed = Math.max(limit ?? 0, meanLimit ?? 0)
  const largest = Math.max(worst.value, allowed)
  const most = allowed > 0 ? Math.min(largest, allowed * FARTHEST) : largest
  const span = most > 0 ? most * 1.04 : 1
  const x = (value: number): number =>
    columns.plotLeft + (Math.min(value, span) / span) * (columns.plotRight - columns.plotLeft)

  const canvas = new Canvas(width)
  const head = PAD + (meanLimit === undefined ? 0 : LABEL_ROW) + (limit === undefined ? 0 : LABEL_ROW) + LABEL_ROW + 6
  const last = head + rows.length * ROW
  const meanMiddle = last + 8 + ROW / 2
  const bottom = meanMiddle + ROW / 2
  const height = bottom + PAD
  const whole: Box = { left: 0, right: width, top: 0, bottom: height }

  drawAxis()
  drawLimits()
  rows.forEach((patch, at) => {
    const middle = head + (at + 0.5) * ROW
    drawBand(middle, limit, patch.value)
    drawMark(`dot patch-${at + 1}`, middle, patch.value, over(patch.value, limit))
    letterRow(
      canvas,
      `patch-${at + 1}`,
      columns,
      middle,
      [fittedText(patch.name, columns.nameWidth)],
      figureOf(patch),
      whole,
    )
  })
  canvas.line('thin', 'rule', point(PAD, last + 4), point(width - PAD, last + 4))
  drawBand(meanMiddle, meanLimit, mean)
  drawDiamond(meanMiddle)
  letterRow(canvas, 'mean', columns, meanMiddle, ['mean'], meanFigure, whole)

  function drawAxis(): void {
    const y = head - 2
    canvas.line('thin', 'axis', point(columns.plotLeft, y), point(columns.plotRight, y))
    for (const tick of roundTicks(0, span, (columns.plotRight - columns.plotLeft) / 44)) {
      canvas.line('thin', 'axis-tick', point(x(tick), y - 4), point(x(tick), y))
      const lettering = { text: figure(tick), at: point(x(tick), y - 6 - DESCENT), anchor: 'middle' as const }
      canvas.placeText('tick', [{ lettering }], whole)
    }
    canvas.line('thin', 'zero', point(columns.plotLeft, y), point(columns.plotLeft, bottom))
  }

  /** The allowances' own lines, each named above the axis. */
  function drawLimits(): void {
    const lines: readonly Allowance[] = [
      ...(limit === undefined
        ? []
        : [
            {
              className: 'limit',
              value: limit,
              stroke: 'dashed',
              text: `allowed ${figure(limit)}`,
              end: last,
            } as const,
          ]),
      ...(meanLimit === undefined
        ? []
        : [
            {
              className: 'mean-limit',
              value: meanLimit,
              stroke: 'chain',
              text: `mean allowed ${figure(meanLimit)}`,
              end: bottom,
            } as const,
          ]),
    ]
    const [lesser, ...greater] = [...lines].sort((a, b) => a.value - b.value)
    if (!lesser) return
    // The one named higher up has its line go up past the other's name: it must not run through it.
    const fitsLeft = x(lesser.value) - 5 - textWidth(lesser.text) > PAD
    const fromTop = fitsLeft ? [...greater, lesser] : [lesser, ...greater]
    fromTop.forEach(({ value, stroke, end, className }, at) => {
      const across = x(value)
      canvas.lines(stroke, className, [
        ...canvas.around({ from: point(across, PAD + at * LABEL_ROW + 3), to: point(across, head - 2) }, 1),
        { from: point(across, head - 2), to: point(across, end) },
      ])
    })
    fromTop.forEach(({ value, text, className }, at) => {
      const y = PAD + (at + 1) * LABEL_ROW - DESCENT - 1
      const across = x(value)
      const wordings = [text, text.replace('allowed ', '')]
      canvas.placeText(
        className,
        wordings.flatMap((one) => [
          { lettering: { text: one, at: point(across - 5, y), anchor: 'end' as const } },
          { lettering: { text: one, at: point(across + 5, y), anchor: 'start' as const } },
        ]),
        whole,
      )
    })
  }

  function drawBand(middle: number, allowedHere: number | undefined, value: number): void {
    const end = x(allowedHere ?? 0)
    if (allowedHere !== undefined)
      canvas.outline(
        'hatch',
        'band',
        corners({ left: columns.plotLeft, right: end, top: middle - 5, bottom: middle + 5 }),
      )
    const from = allowedHere === undefined ? columns.plotLeft : end
    if (x(value) - from > DOT + 1) canvas.line('dotted', 'past', point(from, middle), point(x(value) - DOT - 1, middle))
  }

  function drawMark(className: string, middle: number, value: number, isOver: boolean): void {
    const at = point(x(value), middle)
    if (value > span) canvas.lines('thick', `${className} beyond`, arrowhead(point(at.x - 14, middle), at))
    // Past its allowance a dot is hollow and square: told by its shape.
    else if (isOver)
      canvas.body(
        'thick',
        className,
        corners({ left: at.x - DOT, right: at.x + DOT, top: middle - DOT, bottom: middle + DOT }),
      )
    else canvas.body('thin', className, round(at), { filled: true })
  }

  function drawDiamond(middle: number): void {
    const at = x(mean)
    const shape = [point(at, middle - 6), point(at + 6, middle), point(at, middle + 6), point(at - 6, middle)]
    if (mean > span) canvas.lines('thick', 'mean beyond', arrowhead(point(at - 14, middle), point(at, middle)))
    else canvas.body('thick', 'mean', shape, { filled: !over(mean, meanLimit) })
  }

  const description = describe({ rows: cut ? rows : all, count: all.length, worst, mean, limit, meanLimit, over })
  return { node: canvas.node(height, title, description), title, description, omissions, width, height }
}

const round = (at: Point): readonly Point[] =>
  Array.from({ length: 16 }, (_, step) => towards(at, (step / 8) * Math.PI, DOT))

function describe(what: {
  rows: readonly Patch[]
  count: number
  worst: Patch
  mean: number
  limit: number | undefined
  meanLimit: number | undefined
  over: (value: number, allowed: number | undefined) => boolean
}): string {
  const { rows, count, worst, mean, limit, meanLimit, over } = what
  const failing = rows.filter(({ value }) => over(value, limit)).length
  const each = rows.map(({ name, value }) => `${name} ${figure(value)}`).join(', ')
  return [
    count === 1
      ? 'The difference of one patch from its aim.'
      : `The differences of ${count} patches from their aims${rows.length < count ? `, the ${rows.length} worst of them` : ''}.`,
    `${each}.`,
    `The worst is ${worst.name}, off by ${figure(worst.value)}.`,
    ...(limit === undefined
      ? []
      : [
          `A patch may be off by ${figure(limit)}; ${failing === 0 ? 'none is off by more' : failing === 1 ? 'one is off by more' : `${failing} are off by more`}.`,
        ]),
    `The mean is ${figure(mean)}${meanLimit === undefined ? '.' : `; ${figure(meanLimit)} is allowed${over(mean, meanLimit) ? ', and it is more' : ''}.`}`,
  ].join(' ')
}
