import { type Heading, isHeading } from '../document/names.ts'
import { STAGES, type Stage } from '../format/format.ts'
import type { Cell } from '../schema/document.ts'

/** A heading with the cells below it, up to the next; the first part may have none. */
export interface Part {
  readonly heading: Heading | undefined
  readonly cells: readonly Cell[]
  /** Its place among the cells, the heading counted in: from, and up to but without. */
  readonly from: number
  readonly to: number
}

/** The sections of a sheet: each heading with the cells below it, and what lies above the first. */
export function partsOf(cells: readonly Cell[]): Part[] {
  const starts = cells.flatMap((cell, at) => (isHeading(cell) || at === 0 ? [at] : []))
  return starts.map((from, n) => {
    const to = starts[n + 1] ?? cells.length
    const first = cells[from] as Cell
    return isHeading(first)
      ? { heading: first, cells: cells.slice(from + 1, to), from, to }
      : { heading: undefined, cells: cells.slice(from, to), from, to }
  })
}

/** The stage of each part; one that says none belongs to the stage before it. */
export function stagesOf(parts: readonly Part[], first?: Stage): (Stage | undefined)[] {
  let stage = first
  return parts.map(({ heading }) => {
    stage = heading?.stage ?? stage
    return stage
  })
}

/**
 * Where a section of a stage goes among a sheet's cells: behind the last of its own or an earlier stage, else before the
 * first of a later one. At the end where the sheet, or the section, knows no stages.
 */
export function placeFor(stage: Stage | undefined, cells: readonly Cell[]): number {
  if (stage === undefined) return cells.length
  const parts = partsOf(cells)
  const stages = stagesOf(parts)
  const staged = parts.flatMap(({ from, to }, at) => {
    const of = stages[at]
    return of === undefined ? [] : [{ from, to, rank: STAGES.indexOf(of) }]
  })
  const last = staged.findLast(({ rank }) => rank <= STAGES.indexOf(stage))
  return last ? last.to : (staged[0]?.from ?? cells.length)
}
