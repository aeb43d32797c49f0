import { Canvas } from '../canvas/canvas.ts'
import type { Draw } from '../canvas/drawing-options.ts'
import { type Box, corners, type Point, point, towards } from '../canvas/geometry.ts'
import { arrowhead } from '../canvas/lamp-outline.ts'
import { DESCENT, textWidth } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { figureText as figure } from '../canvas/text-figures.ts'
import { TITLES } from '../canvas/words.ts'
import { fittedText } from '../plots/fitted-text.ts'
import { numberIn, numbersIn, textsIn } from '../plots/given-values.ts'
import { letterRow, rowColumns } from '../plots/row-columns.ts'
import { roundTicks } from '../plots/ticks.ts'
import { PATCHES_WORDS as WORDS } from './words.ts'

const NARROWEST = 240
const PAD = 4
const ROW = 21
const LABEL_ROW = 18
/** Only the worst patches of a larger target are drawn. */
const MOST_ROWS = 40
/** Dots further out than this multiple of the allowance are drawn as arrows at the edge. */
const FARTHEST = 4
const DOT = 4

/** A limit with its line, which ends at `end` in pixels. */
interface Allowance {
  readonly className: string
  readonly value: number
  readonly stroke: 'dashed' | 'chain'
  /** The texts to try, longest first. */
  readonly wordings: readonly string[]
  readonly end: number
}

interface Patch {
  readonly name: string
  readonly value: number
}

/** Draws the difference of each patch as a dot on its allowance, and the mean on its allowance below. */
export const drawPatches: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? TITLES.patches
  const given = numbersIn(inputs.differences)
  if (!given || given.length === 0) return nothingDrawn(width, title, [], WORDS.noDifferences)
  const omissions: string[] = []
  const names = textsIn(inputs.names)
  if (inputs.names !== undefined && !names) omissions.push(WORDS.namesUnusable)
  const all: Patch[] = given.flatMap((value, at): readonly Patch[] => {
    const name = names?.[at]?.trim() || WORDS.patch(at + 1)
    // A difference in tone may have a sign, but only its size is limited.
    if (Number.isFinite(value) && Math.abs(value) < 1e6) return [{ name, value: Math.abs(value) }]
    omissions.push(WORDS.notANumber(name))
    return []
  })
  if (all.length === 0) return nothingDrawn(width, title, omissions, WORDS.noDifferences)
  const allowance = (name: string, what: string): number | undefined => {
    const value = numberIn(inputs[name])
    if (value !== undefined && value > 0 && value < 1e6) return value
    if (inputs[name] !== undefined) omissions.push(WORDS.notAboveZero(what))
    return undefined
  }
  const limit = allowance('limit', WORDS.patchAllowance)
  const meanLimit = allowance('mean_limit', WORDS.meanAllowance)

  const byValue = [...all].sort((a, b) => b.value - a.value)
  const worst = byValue[0] as Patch
  const mean = all.reduce((sum, { value }) => sum + value, 0) / all.length
  const cut = all.length > MOST_ROWS
  const rows = cut ? byValue.slice(0, MOST_ROWS) : inputs.sorted === true ? byValue : all
  if (cut) omissions.push(WORDS.notDrawn(all.length - MOST_ROWS, figure((byValue[MOST_ROWS] as Patch).value)))
  const over = (value: number, allowed: number | undefined): boolean =>
    allowed !== undefined && value > allowed * (1 + 1e-12)
  const figureOf = (patch: Patch): string =>
    [
      ...(patch === worst && all.length > 1 ? [WORDS.worst] : []),
      ...(over(patch.value, limit) ? [WORDS.over] : []),
      figure(patch.value),
    ].join(' ')
  const meanFigure = over(mean, meanLimit) ? `${WORDS.over} ${figure(mean)}` : figure(mean)
  const columns = rowColumns([WORDS.mean, ...rows.map(({ name }) => name)], [meanFigure, ...rows.map(figureOf)], width)

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
  letterRow(canvas, 'mean', columns, meanMiddle, [WORDS.mean], meanFigure, whole)

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

  /** Draws the lines of the allowances, each labelled above the axis. */
  function drawLimits(): void {
    const lines: readonly Allowance[] = [
      ...(limit === undefined
        ? []
        : [
            {
              className: 'limit',
              value: limit,
              stroke: 'dashed',
              wordings: WORDS.allowed(figure(limit)),
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
              wordings: WORDS.meanAllowed(figure(meanLimit)),
              end: bottom,
            } as const,
          ]),
    ]
    const [lesser, ...greater] = [...lines].sort((a, b) => a.value - b.value)
    if (!lesser) return
    // The line of the upper label must not cross the lower label.
    const fitsLeft = x(lesser.value) - 5 - textWidth(lesser.wordings[0] as string) > PAD
    const fromTop = fitsLeft ? [...greater, lesser] : [lesser, ...greater]
    fromTop.forEach(({ value, stroke, end, className }, at) => {
      const across = x(value)
      canvas.lines(stroke, className, [
        ...canvas.around({ from: point(across, PAD + at * LABEL_ROW + 3), to: point(across, head - 2) }, 1),
        { from: point(across, head - 2), to: point(across, end) },
      ])
    })
    fromTop.forEach(({ value, wordings, className }, at) => {
      const y = PAD + (at + 1) * LABEL_ROW - DESCENT - 1
      const across = x(value)
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
    // A patch over its allowance is a hollow square, so that the state does not depend on colour.
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
  const each = rows.map(({ name, value }) => WORDS.each(name, figure(value))).join(', ')
  return [
    count === 1 ? WORDS.onePatch : WORDS.patches(count, rows.length),
    WORDS.list(each),
    WORDS.worstIs(worst.name, figure(worst.value)),
    ...(limit === undefined ? [] : [WORDS.patchLimit(figure(limit), failing)]),
    meanLimit === undefined
      ? WORDS.meanIs(figure(mean))
      : WORDS.meanLimit(figure(mean), figure(meanLimit), over(mean, meanLimit)),
  ].join(' ')
}
