import type { Type } from '../../language/index.ts'
import {
  type Dimension,
  type DisplayUnit,
  defaultUnit,
  ILLUMINANCE,
  LIGHT_DOSE,
  SAMPLING,
  STOP,
  showQuantity,
} from '../../units/index.ts'
import { dayAndTime } from '../../units/plural.ts'
import { unitOfType } from '../document/measured.ts'
import { type ReadingCell, readUnder } from '../document/reading.ts'
import type { Compare } from '../engine/capabilities.ts'
import type { Result } from '../schema/document.ts'
import * as words from './words.ts'

/** Light is compared in stops. */
const IN_STOPS: ReadonlySet<Dimension> = new Set([ILLUMINANCE, LIGHT_DOSE])
/** Nearer than this is the same figure. */
const SAME = 1e-9
const isSame = (one: number, other: number): boolean =>
  Math.abs(one - other) <= SAME * Math.max(Math.abs(one), Math.abs(other))

/** How a measured figure differs from the computed one, as the trade says it: `4 mm over`, `0.3 stop longer`. */
export function differenceText(measured: number, computed: number, type: Type, unit?: DisplayUnit): string {
  if (type.kind !== 'number') return ''
  if (isSame(measured, computed)) return words.asComputed
  const shown = unitOfType(type, unit)
  const more = measured > computed
  const ratio = measured / computed
  if (shown?.notation === 'f-number' && ratio > 0)
    return words.byAmount(stops(2 * Math.log2(ratio)), more ? 'smaller' : 'wider')
  if (shown?.notation === 'shutter' && ratio > 0)
    return words.byAmount(stops(Math.log2(ratio)), more ? 'longer' : 'shorter')
  const side = more ? 'over' : 'under'
  if (shown?.notation === 'ratio') return words.byAmount(percent(ratio), side)
  const own = asFineAs(computed, measured, type.dimension, shown)
  if (IN_STOPS.has(type.dimension) && ratio > 0) return words.byAmounts(own, side, stops(Math.log2(ratio)))
  if (type.dimension === SAMPLING && computed !== 0) return words.byAmounts(own, side, percent(ratio))
  return words.byAmount(own, side)
}

/** What to do where a measured value differs, from the result's own words: `Lower it by 4 mm`. */
function adjustText(
  adjust: Result['adjust'],
  measured: number,
  computed: number,
  type: Type,
  unit?: DisplayUnit,
): string | undefined {
  if (!adjust || type.kind !== 'number' || isSame(measured, computed)) return undefined
  const by = asFineAs(computed, measured, type.dimension, unitOfType(type, unit))
  return (measured > computed ? adjust.over : adjust.under).replace('{}', by)
}

/** To the digits that the computed figure is shown with; finer only where those would show nothing. */
function asFineAs(computed: number, measured: number, dimension: Dimension, declared: DisplayUnit | undefined): string {
  const unit = { ...(declared ?? defaultUnit(Math.max(Math.abs(computed), Math.abs(measured)), dimension)), offset: 0 }
  const decimals = showQuantity(computed, dimension, { unit }).figure.split('.')[1]?.length ?? 0
  const off = Math.abs(measured - computed) / unit.factor
  const rounded = Number(off.toFixed(decimals))
  return showQuantity((rounded === 0 ? off : rounded) * unit.factor, dimension, { unit }).text
}

const stops = (by: number): string => showQuantity(Math.abs(by), STOP).text
const percent = (ratio: number): string => `${Number((100 * Math.abs(ratio - 1)).toPrecision(2))} %`

/** When something was measured, and the initials of who did; undefined where that is not known. */
export function readingText(cell: ReadingCell): string | undefined {
  const under = readUnder(cell)
  if (!under?.when) return undefined
  const at = new Date(under.when)
  return Number.isNaN(at.getTime()) ? undefined : words.measuredAt(dayAndTime(at), under.by)
}

/** How a measured value differs from the computed one, and what to do about it. */
export const compared: Compare = ({ cell, unit }, measured, computed, type) => {
  const adjust = adjustText(cell.kind === 'result' ? cell.adjust : undefined, measured, computed, type, unit)
  return { ...(adjust === undefined ? {} : { adjust }), difference: differenceText(measured, computed, type, unit) }
}
