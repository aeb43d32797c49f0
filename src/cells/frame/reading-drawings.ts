import type { Drawing } from '../../drawings/canvas/tree.ts'
import { drawAreas, type SketchedArea } from '../../drawings/frame/areas-sketch.ts'
import { drawPatchPairs, type PatchPair } from '../../drawings/frame/patch-pairs.ts'
import { drawSfrCurve } from '../../drawings/frame/sfr-curve.ts'
import { drawMeasuredLight } from '../../drawings/measured-light/measured-light.ts'
import type { Value } from '../../language/index.ts'
import type { Frame } from '../../worksheet/index.ts'
import { type AreaKind, boxesOf, cornersOf, type FrameArea, handlesOf, type Point } from './area-shapes.ts'
import { shownPreview } from './preview.ts'
import { readingLines } from './reading-lines.ts'
import { FIGURE_NAMES, frameWords as words } from './words.ts'

type Reading = Readonly<Record<string, unknown>>

/** The figure by which an area is known at a glance. */
const MAIN: Readonly<Record<AreaKind, string>> = {
  patch: 'noise',
  evenness: 'spread',
  rule: 'sampling',
  square: 'sampling_across',
  edge: 'mtf50',
  chart: 'mean',
  line: 'bow_percent',
}

const readingOf = ({ readings = {} }: Frame, { name }: FrameArea): Reading | undefined =>
  Object.hasOwn(readings, name) ? readings[name] : undefined

/** What an area's reading looks like: the light as a map, the response as a curve, patches beside their references. */
export function readingDrawing(area: FrameArea, reading: Reading | undefined, width: number): Drawing | undefined {
  if (!reading) return undefined
  if (area.kind === 'evenness')
    return drawMeasuredLight({ measured: reading.light as Value }, { width, title: words.map(area.name) })
  if (area.kind === 'edge') return drawSfrCurve(reading, width)
  return area.kind === 'chart' ? drawPatchPairs(pairsOf(area, reading), width) : undefined
}

/** The patches of a reading that still are the area's. */
export function pairsOf({ patches = [] }: FrameArea, reading: Reading): PatchPair[] {
  const measured = Array.isArray(reading.patches) ? (reading.patches as unknown[]) : []
  return measured.flatMap((one, i): PatchPair[] => {
    const { name, lab, delta_e_2000: difference } = (one ?? {}) as Record<string, unknown>
    const reference = patches[i]?.lab
    return isLab(lab) && isLab(reference) && typeof difference === 'number' && Number.isFinite(difference)
      ? [{ name: String(name), measured: lab, reference, difference }]
      : []
  })
}

const isLab = (value: unknown): value is [number, number, number] =>
  Array.isArray(value) && value.length === 3 && value.every((one) => typeof one === 'number' && Number.isFinite(one))

/** The picture last measured with its areas, each with a figure. */
export function areasDrawing(cell: Frame, width: number): Drawing | undefined {
  const { areas = [], picture } = cell
  if (!picture) return undefined
  const sketched = areas.map((area): SketchedArea => {
    const lines = readingLines(area.kind, readingOf(cell, area))
    const figure = lines.find(([what]) => what === FIGURE_NAMES[MAIN[area.kind]])?.[1] ?? ''
    return { name: area.name, figure, outlines: outlinesOf(area, picture.pixels) }
  })
  return drawAreas(picture.pixels, sketched, width, shownPreview(cell))
}

function outlinesOf(area: FrameArea, { width, height }: { width: number; height: number }): readonly Point[][] {
  if (area.corners || area.from) return [handlesOf(area)]
  const boxes = area.kind === 'evenness' && !area.box ? ([[0, 0, width, height]] as const) : boxesOf(area)
  return boxes.map(cornersOf)
}
