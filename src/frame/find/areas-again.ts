import { readAreas } from '../areas/read-areas.ts'
import type { Frame } from '../measure.ts'
import { FrameError } from '../problem.ts'
import { chartAgain } from './find-again.ts'
import { findCorners } from './find-corners.ts'
import type { Corners } from './four-corners.ts'

/** An area as a document holds it: marked, or still without a place in the picture. */
export interface MarkedArea {
  readonly kind: string
  readonly name: string
  readonly corners?: readonly (readonly number[])[] | undefined
  /** For a chart: its four corners, when they were found with its patches. */
  readonly outline?: readonly (readonly number[])[] | undefined
  readonly patches?: unknown
}

/** Whether corners belong to the area: those of a card, or of a chart whose outline is known. */
const hasCorners = (area: MarkedArea): boolean =>
  area.kind === 'square' || (area.kind === 'chart' && isFour(area.outline))

const isFour = (corners: MarkedArea['outline']): boolean => corners?.length === 4

/** In another picture the one card or chart is found again where that is safe; if there are two, nothing shows which is meant. */
export function foundAgain<A extends MarkedArea>(
  { picture }: Frame,
  areas: readonly A[],
): { areas: readonly A[]; found: readonly string[]; unfound: readonly string[] } {
  const meant = areas.filter(hasCorners)
  const [only] = meant
  if (!only || meant.length > 1) return { areas, found: [], unfound: meant.map(({ name }) => name) }
  const again = at(picture, only)
  if (!again) return { areas, found: [], unfound: [only.name] }
  return { areas: areas.map((area) => (area === only ? again : area)), found: [only.name], unfound: [] }
}

/**
 * An area with its corners as they are found; a chart’s outline the first time, its patches after that. Undefined where
 * it is not safe.
 */
export const withCorners = <A extends MarkedArea>({ picture }: Frame, area: A): A | undefined => at(picture, area)

function at<A extends MarkedArea>(picture: Frame['picture'], area: A): A | undefined {
  const corners = findCorners(picture)
  if (!corners) return undefined
  if (area.kind === 'square') return { ...area, corners: plain(corners) }
  if (area.kind !== 'chart') return undefined
  if (!isFour(area.outline)) return { ...area, outline: plain(corners) }
  const chart = chartIn(area)
  const again = chart && chartAgain(chart, area.outline as unknown as Corners, corners, picture)
  if (!again) return undefined
  const patches = again.patches.map(({ name, box, lab }) => ({ name, box: [...box], lab: [...lab] }))
  return { ...area, patches, outline: plain(again.outline) }
}

/** A chart that can be measured; undefined where its patches are not all there. */
function chartIn(area: MarkedArea) {
  try {
    const [chart] = readAreas([area])
    return chart?.kind === 'chart' ? chart : undefined
  } catch (error) {
    if (error instanceof FrameError) return undefined
    throw error
  }
}

/** To a hundredth of a pixel. */
const plain = (corners: Corners): number[][] => corners.map((one) => one.map((value) => Math.round(value * 100) / 100))
