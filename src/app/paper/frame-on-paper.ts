import { areasDrawing, readingDrawing } from '../../cells/frame/reading-drawings.ts'
import { readingLines, takenLine } from '../../cells/frame/reading-lines.ts'
import { frameWords as words } from '../../cells/frame/words.ts'
import { labelOf } from '../../cells/shared/cell-view.ts'
import { type Drawing, element, type Node } from '../../drawings/canvas/tree.ts'
import type { Frame } from '../../worksheet/index.ts'

/** As wide as the drawings beside it, px. */
const WIDTH = 340

function onPaper(drawing: Drawing | undefined, title?: string): Node[] {
  if (!drawing) return []
  const { node, width, height, description } = drawing
  return [
    element(
      'figure',
      {},
      { ...node, attributes: { ...node.attributes, width, height } },
      element(
        'figcaption',
        {},
        element('p', {}, title ?? drawing.title),
        element('p', { class: 'small' }, description),
      ),
    ),
  ]
}

/** A frame on the job sheet: which picture was measured, and each area with its figures. */
export function frameOnPaper(cell: Frame): Node[] {
  const { picture, areas = [], readings = {} } = cell
  if (!picture) return [element('p', {}, `${labelOf(cell)}: ${words.none}`)]
  const { name, pixels, taken } = picture
  const facts = words.facts(name, pixels.width, pixels.height, pixels.bits, pixels.encoding)
  const wrote = takenLine(taken as Readonly<Record<string, unknown>> | null)
  const rows = areas.flatMap((area) => {
    const lines = readingLines(area.kind, Object.hasOwn(readings, area.name) ? readings[area.name] : undefined)
    return lines.map(([what, figure], i) =>
      element(
        'tr',
        {},
        element('td', {}, i === 0 ? words.areaLabel(area.kind, area.name) : ''),
        element('td', {}, what),
        element('td', {}, figure),
      ),
    )
  })
  return [
    element('p', {}, `${labelOf(cell)}: ${facts}${wrote ? `; ${wrote}` : ''}`),
    ...onPaper(areasDrawing(cell, WIDTH)),
    ...(rows.length > 0 ? [element('table', {}, ...rows)] : []),
    ...areas.flatMap((area) =>
      onPaper(
        readingDrawing(area, Object.hasOwn(readings, area.name) ? readings[area.name] : undefined, WIDTH),
        words.areaLabel(area.kind, area.name),
      ),
    ),
  ]
}
