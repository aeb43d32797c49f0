import { signedStops, stopsText } from '../../units/stops.ts'
import { Canvas } from '../canvas/canvas.ts'
import type { Draw } from '../canvas/drawing-options.ts'
import { lengthIn, lengthUnit } from '../canvas/drawing-unit.ts'
import { point } from '../canvas/geometry.ts'
import { ASCENT } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { withoutUnit } from '../canvas/text-figures.ts'
import type { Table } from '../canvas/tree.ts'
import { CANVAS_WORDS as SHARED, TITLES } from '../canvas/words.ts'
import { fittedText } from '../plots/fitted-text.ts'
import { isolineStep } from '../plots/isolines.ts'
import { extreme, type Fields, lessOther, rootMeanSquare, spreadOf } from './fields.ts'
import { type MeasuredLight, readMeasuredLight } from './measured-light-inputs.ts'
import { drawPanel, type Panel, TITLE } from './panel.ts'
import { MEASURED_LIGHT_WORDS as WORDS } from './words.ts'

const PAD = 4
const ROW = 18
const GAP = 12
const NARROWEST = 240
/** Maps lie side by side where each has so much width, and are never wider than the other, px. */
const LEAST_MAP = 150
const WIDEST_MAP = 420
const TALLEST = 1.25
const SHALLOWEST = 0.25

/** Draws the light measured in a frame, beside it the computed light on the same scale, and what differs. */
export const drawMeasuredLight: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? TITLES['measured-light']
  const show = lengthIn(lengthUnit(options.unit))
  const read = readMeasuredLight(inputs, show)
  const { measured, size, omissions } = read
  if (!measured) return nothingDrawn(width, title, omissions, WORDS.nothingMeasured)

  const canvas = new Canvas(width)
  const maps = mapsOf(read)
  const [shared] = maps as [Omit<Panel, 'box'>]
  const heads = [WORDS.lines(shared.step)]
  const foot = [
    ...(isBeyond(read) ? [WORDS.hatched(stopsText(read.limit as number))] : []),
    ...(size ? [WORDS.covers(SHARED.times(withoutUnit(show(size[0])), show(size[1])))] : []),
  ]
  const { panels, bottom } = placed(maps, aspectOf(measured, read), width, PAD + heads.length * ROW)
  const height = bottom + foot.length * ROW + PAD
  const paper = { left: 0, right: width, top: 0, bottom: height }
  const letter = (text: string, y: number): void => {
    const lettering = { text: fittedText(text, width - 2 * PAD), at: point(PAD, y + ASCENT), anchor: 'start' as const }
    canvas.placeText('note', [{ lettering }], paper)
  }
  for (const [at, text] of heads.entries()) letter(text, PAD + 1 + at * ROW)
  for (const [at, text] of foot.entries()) letter(text, bottom + 2 + at * ROW)
  for (const panel of panels) drawPanel(canvas, panel)
  const description = describe(read, maps)
  return {
    node: canvas.node(height, title, description),
    title,
    description,
    table: tableOf(read),
    omissions,
    width,
    height,
  }
}

/** The measured map; where light is computed, that map on the same scale, and one of what differs. */
function mapsOf({ measured, computed, withLens, limit }: MeasuredLight): Omit<Panel, 'box'>[] {
  const found = measured as Fields
  const spreads = [spreadOf(found), ...(computed ? [spreadOf(computed)] : [])]
  const step = isolineStep(Math.max(...spreads))
  const map = (
    className: string,
    name: string,
    fields: Fields,
    own = step,
    allowed: number | undefined = undefined,
  ): Omit<Panel, 'box'> => ({
    className,
    titles: [
      WORDS.headed(name, stopsText(spreadOf(fields))),
      WORDS.headed(name.split(',')[0] as string, stopsText(spreadOf(fields))),
    ],
    fields,
    step: own,
    limit: allowed,
  })
  const first = map('measured', WORDS.measured, found, step, limit)
  if (!computed) return [first]
  const off = lessOther(found, computed)
  const finer = isolineStep(spreadOf(off))
  return [
    first,
    map('computed', withLens ? WORDS.withLens : WORDS.computed, computed),
    {
      ...map('difference', WORDS.difference, off, finer),
      titles: [WORDS.headed(WORDS.difference, WORDS.linesOfDifference(finer)), WORDS.differenceEvery(finer)],
    },
  ]
}

/** Height over width of what was measured: as it lies on the original, or square fields where that is not known. */
function aspectOf({ columns, rows }: Fields, { share: [, , across, down], size }: MeasuredLight): number {
  const own = size ? (size[1] * down) / (size[0] * across) : rows / columns
  return Math.min(TALLEST, Math.max(SHALLOWEST, own > 0 && Number.isFinite(own) ? own : 1))
}

function placed(
  maps: readonly Omit<Panel, 'box'>[],
  aspect: number,
  width: number,
  top: number,
): { panels: Panel[]; bottom: number } {
  const across = Math.max(1, Math.min(maps.length, Math.floor((width - 2 * PAD + GAP) / (LEAST_MAP + GAP))))
  const each = Math.min(WIDEST_MAP, (width - 2 * PAD - (across - 1) * GAP) / across)
  const tall = each * aspect
  const panels = maps.map((map, at): Panel => {
    const left = PAD + (at % across) * (each + GAP)
    const upper = top + Math.floor(at / across) * (tall + TITLE + 4) + TITLE
    return { ...map, box: { left, right: left + each, top: upper, bottom: upper + tall } }
  })
  return { panels, bottom: Math.max(...panels.map(({ box }) => box.bottom)) + 4 }
}

const isBeyond = ({ measured, limit }: MeasuredLight): boolean =>
  measured !== undefined && limit !== undefined && spreadOf(measured) > limit * (1 + 1e-9)

const placeOf = ({ columns }: Fields, at: number): string => WORDS.at((at % columns) + 1, Math.floor(at / columns) + 1)

/** Every figure of the maps in sentences. */
function describe(read: MeasuredLight, maps: readonly Omit<Panel, 'box'>[]): string {
  const { measured, computed, withLens, limit } = read
  const found = measured as Fields
  const names = [WORDS.measured, withLens ? WORDS.withLens : WORDS.computed]
  const off = computed && lessOther(found, computed)
  const worst =
    off && [extreme(off, 1), extreme(off, -1)].reduce((a, b) => (Math.abs(b.stops) > Math.abs(a.stops) ? b : a))
  return [
    WORDS.introduction(found.columns, found.rows, (maps[0] as Panel).step),
    ...[found, ...(computed ? [computed] : [])].map((fields, i) => {
      const [greatest, least] = [extreme(fields, 1), extreme(fields, -1)]
      return WORDS.part(
        names[i] as string,
        signedStops(greatest.stops),
        placeOf(fields, greatest.at),
        signedStops(least.stops),
        placeOf(fields, least.at),
        stopsText(spreadOf(fields)),
      )
    }),
    ...(off && worst
      ? [
          WORDS.differ(`${signedStops(worst.stops)} stop`, placeOf(off, worst.at), stopsText(rootMeanSquare(off))),
          withLens ? WORDS.lensIncluded : WORDS.lensNotIncluded,
        ]
      : []),
    ...(limit === undefined ? [] : [(isBeyond(read) ? WORDS.beyond : WORDS.within)(stopsText(limit))]),
  ].join(' ')
}

/** The figure of every field, the computed one in brackets. */
function tableOf({ measured, computed }: MeasuredLight): Table {
  const { columns, rows, stops } = measured as Fields
  const text = (at: number): string => {
    const found = signedStops(stops[at] as number)
    return computed ? WORDS.both(found, signedStops(computed.stops[at] as number)) : found
  }
  return {
    head: [WORDS.tableHead, ...Array.from({ length: columns }, (_, i) => String(i + 1))],
    rows: Array.from({ length: rows }, (_, row) => [
      WORDS.row(row + 1),
      ...Array.from({ length: columns }, (_, column) => text(row * columns + column)),
    ]),
  }
}
