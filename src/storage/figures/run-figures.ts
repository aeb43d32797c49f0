import type { Sheet } from '../../worksheet/editing/sheet.ts'
import { KIND_TITLES } from '../../worksheet/format/words.ts'
import type { RunPlan } from '../../worksheet/run/plan.ts'
import { dataText, heightsText, meansText, ratioText, tilesText, timeText } from '../../worksheet/run/plan-text.ts'
import { runOf } from '../../worksheet/run/sheet-run.ts'
import type { Cell, Run } from '../../worksheet/schema/document.ts'
import { asTableCell } from './compared-figures.ts'
import { RUN_HEADS, FIGURES_WORDS as WORDS } from './words.ts'

/** Somewhat less than the longest text of a field. */
const LONGEST = 18_000

function clipped(names: readonly string[]): string {
  const all = names.join('; ')
  if (all.length <= LONGEST) return all
  let fitting = 0
  let length = 0
  for (const name of names) {
    length += name.length + 2
    if (length > LONGEST) break
    fitting++
  }
  return WORDS.originals(names.slice(0, fitting), names.length - fitting)
}

function rowsOf({ setups, unplanned, total }: RunPlan): string[][] {
  const amount = (frames: number, time: number, data: number): string[] => [
    `${frames}`,
    time > 0 ? timeText(time) : '',
    data > 0 ? dataText(data) : '',
  ]
  const rows = setups.map((setup, at) => [
    `${at + 1}`,
    ratioText(setup.magnification),
    heightsText(setup),
    [setup.exposure, meansText(setup.means)].filter(Boolean).join(', '),
    clipped(
      setup.originals.map(({ original, tiles }) => [original.title, tilesText(tiles)].filter(Boolean).join(': ')),
    ),
    ...amount(setup.frames, setup.time, setup.data),
  ])
  if (unplanned.length > 0)
    rows.push([
      WORDS.notPlanned,
      '',
      '',
      '',
      clipped(unplanned.map(({ title, why }) => `${title}: ${why}`)),
      '',
      '',
      '',
    ])
  rows.push([WORDS.inAll, '', '', '', `${total.count}`, ...amount(total.frames, total.all, total.data)])
  return rows
}

/** The plan of a run as it was: a row for each set-up, one for what is in none, and one for all. */
export function runFigures(sheet: Sheet, cell: Run): Cell {
  const title = cell.title?.trim() || KIND_TITLES.run
  const { plan } = runOf(sheet, cell)
  if (!plan) return { kind: 'note', id: cell.id, text: WORDS.runNotPlanned(title) }
  return asTableCell(sheet, cell, title, RUN_HEADS, rowsOf(plan))
}
