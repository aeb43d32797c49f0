import { showFigure } from '../../units/index.ts'
import { Canvas } from '../canvas/canvas.ts'
import { type Dimension, drawDimension, figures, LANE, letterDimension } from '../canvas/dimension-line.ts'
import type { Draw } from '../canvas/drawing-options.ts'
import { lengthIn, lengthUnit } from '../canvas/drawing-unit.ts'
import { type Box, corners, type Point, point } from '../canvas/geometry.ts'
import { hatch } from '../canvas/hatch.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import type { Metres, Pixels } from '../canvas/measures.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { numberReader } from '../canvas/number-inputs.ts'
import { PX_PER_MM } from '../canvas/scale.ts'
import { TITLES } from '../canvas/words.ts'
import { ZONE_WORDS as WORDS } from './words.ts'

const PAD = 4
const NARROWEST = 240
const ROW = 18
/** The height of the drawn zone in pixels: at most, and as a fraction of the width. */
const TALLEST = { most: 130, share: 0.34 }
const FARTHEST: Metres = 100
/** Scales of height: times larger or smaller than life. */
const STEPS = [1, 2, 3, 5]

/** The largest round scale, life size or not, at which a height in metres fits a space in pixels. */
function heightScale(
  metres: Metres,
  space: Pixels,
  zoom: number,
): { readonly pxPerMetre: number; readonly name: string } {
  const lifeSize = (PX_PER_MM * 1000) / zoom
  const most = space / (metres * lifeSize)
  const decade = 10 ** Math.floor(Math.log10(most))
  const enlarged = most >= 1
  const steps = enlarged ? STEPS : [1, 2, 2.5, 4, 5]
  const factor = steps.filter((step) => step * decade <= most * (1 + 1e-9)).at(-1) ?? 1
  const times = Number((factor * decade).toPrecision(3))
  return {
    pxPerMetre: lifeSize * times,
    name: enlarged ? `${times}:1` : `1:${showFigure(Number((1 / times).toPrecision(3)))}`,
  }
}

/** Draws the depth of field as a zone, and in it how far the sheet is off flat, both to the same scale of height. */
export const drawDepthZone: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? TITLES['depth-zone']
  const show = lengthIn(lengthUnit(options.unit))
  const omissions: string[] = []
  const read = numberReader(omissions, show)
  const depth = read.positive(inputs.depth, WORDS.depth, FARTHEST)
  const unevenness = inputs.unevenness === 0 ? 0 : read.positive(inputs.unevenness, WORDS.unevenness, FARTHEST)
  if (depth === undefined) return nothingDrawn(width, title, omissions, WORDS.depthUnknown)

  const space = Math.min(TALLEST.most, width * TALLEST.share)
  const scale = heightScale(Math.max(depth, unevenness ?? 0), space, options.zoom ?? 1)
  const px = (metres: Metres): Pixels => metres * scale.pxPerMetre
  const left = PAD + LANE + 10
  const right = width - PAD - textWidth(WORDS.sheet) - 8
  const spread = Math.max(px(depth), px(unevenness ?? 0), 3)
  const middle = PAD + ROW + 14 + spread / 2
  const zone: Box = { left, right, top: middle - px(depth) / 2, bottom: middle + px(depth) / 2 }
  const height = middle + spread / 2 + (unevenness === undefined ? 8 : ROW + 8) + PAD
  const whole: Box = { left: 0, right: width, top: 0, bottom: height }

  const canvas = new Canvas(width)
  canvas.placeText(
    'head',
    [WORDS.headSplit(scale.name), WORDS.head(scale.name)].map((text) => ({
      lettering: { text, at: point(PAD, PAD + ASCENT + 1), anchor: 'start' as const },
    })),
    whole,
  )
  const shown = show(depth)
  const dimension: Dimension = {
    className: 'dimension-depth',
    direction: 'upright',
    from: point(left, zone.bottom),
    to: point(left, zone.top),
    at: PAD + LANE - 4,
    wordings: figures(shown),
    emphasized: options.emphasis === 'depth',
  }
  canvas.lines('dashed', 'zone', [
    { from: point(left, zone.top), to: point(right, zone.top) },
    { from: point(left, zone.bottom), to: point(right, zone.bottom) },
  ])
  drawDimension(canvas, dimension)
  const sheet = sheetCurve(left, right, middle, px(unevenness ?? 0))
  canvas.curves('thick', 'sheet', [sheet])
  letterDimension(canvas, dimension, whole)
  const end = sheet.at(-1) as Point
  canvas.placeText(
    'sheet',
    [0, -8, 8, -14, 14].map((aside) => ({
      lettering: { text: WORDS.sheet, at: point(end.x + 6, end.y + ASCENT / 2 - 1 + aside), anchor: 'start' as const },
    })),
    whole,
  )
  if (unevenness !== undefined) {
    const y = middle + spread / 2 + ASCENT + 6
    const places = WORDS.offFlat(show(unevenness)).flatMap((text) =>
      [0, 1, 2, 3].map((step) => ({
        lettering: { text, at: point((left + right) / 2, y + step * 3), anchor: 'middle' as const },
      })),
    )
    canvas.placeText('off-flat', places, whole)
  }
  if (px(depth) > 4)
    canvas.lines('hatch', 'zone', hatch(corners(zone), { spacing: 9, angle: Math.PI / 4, around: canvas.occupied }))

  const share = unevenness === undefined ? undefined : showFigure(Number(((100 * unevenness) / depth).toPrecision(3)))
  const description = [
    WORDS.introduction(shown, scale.name),
    ...(unevenness === undefined || share === undefined
      ? []
      : [(unevenness <= depth ? WORDS.within : WORDS.beyond)(show(unevenness), share)]),
  ].join(' ')
  return { node: canvas.node(height, title, description), title, description, omissions, width, height }
}

/** A wavy sheet whose highest and lowest points are `spread` pixels apart around the middle. */
const sheetCurve = (left: Pixels, right: Pixels, middle: Pixels, spread: Pixels): readonly Point[] =>
  Array.from({ length: 65 }, (_, step) => {
    const share = step / 64
    return point(left + (right - left) * share, middle - (spread / 2) * Math.sin(share * 3 * Math.PI))
  })
