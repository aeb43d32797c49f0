import { ChangeRefused } from '../document/change.ts'
import { isNamed } from '../document/names.ts'
import { NAME_PATTERN } from '../format/format.ts'
import { FRAME_PARTS } from '../frame/frame-readings.ts'
import type { Cell, Frame } from '../schema/document.ts'
import { followPart } from './follow-names.ts'
import * as words from './words.ts'

/** Why an area of a frame may not have a name; undefined where it may. */
function refusedAreaName(name: string, { areas = [] }: Pick<Frame, 'areas'>, at: number): string | undefined {
  if (!NAME_PATTERN.test(name)) return words.areaNotAName(name)
  if (FRAME_PARTS.some((part) => part === name)) return words.areaIsReserved(name)
  if (areas.some((area, other) => other !== at && area.name === name)) return words.areaNameTaken(name)
  return undefined
}

/** An area of a frame under another name, which follows into its reading and into `card.name` in every formula. */
export function withAreaRenamed(cells: readonly Cell[], id: string, at: number, name: string): Cell[] {
  const cell = cells.find((one): one is Frame => one.id === id && one.kind === 'frame')
  const area = cell?.areas?.[at]
  if (!cell?.areas || !area) throw new ChangeRefused(words.areaGone)
  const from = area.name
  if (from === name) return [...cells]
  const refused = refusedAreaName(name, cell, at)
  if (refused) throw new ChangeRefused(refused)
  const renamed: Frame = { ...cell, areas: cell.areas.with(at, { ...area, name }) }
  const followed = (readings: NonNullable<Frame['readings']>): NonNullable<Frame['readings']> =>
    Object.fromEntries(Object.entries(readings).map(([key, reading]) => [key === from ? name : key, reading]))
  if (cell.readings) renamed.readings = followed(cell.readings)
  if (cell.series) renamed.series = cell.series.map((entry) => ({ ...entry, readings: followed(entry.readings) }))
  const put = cells.map((other) => (other.id === id ? renamed : other))
  // If two cells have one name, formulas mean the first.
  const meant = cells.find((one) => isNamed(one) && one.name === cell.name)
  return meant === cell ? put.map((other) => followPart(other, { of: cell, from, to: name }, cells)) : put
}
